import { readFile, stat } from 'node:fs/promises';
import { basename } from 'node:path';
import type { Command } from 'commander';
import { english } from '../../prompts/en/index.ts';
import { systemCause } from '../files/cause.ts';
import type { KeptModel } from '../server/index.ts';
import { inMb, modelLimits } from '../voice/decoders/vosk/model/limits.ts';
import { readModel } from '../voice/decoders/vosk/model/read-model.ts';
import { VoiceError } from '../voice/errors.ts';
import { wordsOf } from '../voice/wording.ts';
import { OptionError } from './run/options.ts';

/** Where models are kept, for `model` and for `serve`. */
export const MODELS_FOLDER = 'first-fire-models';

/** Loaded when it is needed: no other command waits for the server. */
const folder = () => import('../server/index.ts');

interface Kept {
  readonly models: string;
}

function parseSha256(value: string): string {
  if (/^[0-9a-fA-F]{64}$/.test(value)) return value.toLowerCase();
  throw new OptionError(`"${value}" is no SHA-256; give its 64 hexadecimal digits.`);
}

/** Adds `model add FILE`, `model list` and `model remove NAME`. */
export function registerModel(program: Command): void {
  const model = program
    .command('model')
    .description(
      'Vosk models for the recognizer of the tablets: bring one, see which there are, take one out',
    );
  const withFolder = (command: Command) =>
    command.option('--models <folder>', 'where the models are kept', MODELS_FOLDER);

  withFolder(model.command('add'))
    .description('check a model archive and keep it: a zip as Vosk models are published, or a tar.gz')
    .argument('<file>', 'the archive')
    .option('--sha256 <hash>', 'the SHA-256 that its publisher gives', parseSha256)
    .action(async (file: string, { models, sha256 }: Kept & { sha256?: string }) => {
      const checked = await readModel(await readArchive(file), {
        archiveName: basename(file),
        stopWords: wordsOf(english.stopWordings),
        sha256,
      });
      console.log(`${file}: SHA-256 ${checked.sha256}`);
      const kept = await (await folder()).keepModel(models, checked, new Date());
      console.log(`Kept as ${describe(kept)}. Tablets that are paired with "serve" can take it.`);
    });

  withFolder(model.command('list'))
    .description('the models that are kept')
    .action(async ({ models }: Kept) => {
      const kept = await (await folder()).listModels(models);
      for (const each of kept) console.log(describe(each));
      if (kept.length === 0) console.log(`No models in ${models}; bring one: npm start -- model add FILE.`);
    });

  withFolder(model.command('remove'))
    .description('take a model out')
    .argument('<name>', 'its name, as "model list" shows it')
    .action(async (name: string, { models }: Kept) => {
      await (await folder()).removeModel(models, name);
      console.log(`${name} is taken out. Tablets that have it already keep it.`);
    });
}

const describe = ({ name, bytes, unpackedBytes, sha256 }: KeptModel) =>
  `${name}: ${inMb(bytes)}, ${inMb(unpackedBytes)} unpacked, SHA-256 ${sha256}`;

/** @throws VoiceError `fileUnusable`; what is too large is not even read */
async function readArchive(file: string): Promise<Blob> {
  const unusable = (why: string, todo: string) =>
    new VoiceError('fileUnusable', `The model archive ${file} ${why}; ${todo}.`);
  try {
    const about = await stat(file);
    if (!about.isFile()) throw unusable('is no file', 'give the zip or tar.gz itself');
    if (about.size > modelLimits.archiveBytes)
      throw unusable(
        `has ${inMb(about.size)}, more than the ${inMb(modelLimits.archiveBytes)} that are taken`,
        'bring a small model',
      );
    return new Blob([await readFile(file)]);
  } catch (cause) {
    if (cause instanceof VoiceError) throw cause;
    throw unusable(`cannot be read: ${systemCause(cause)}`, 'give the path of a Vosk model archive');
  }
}
