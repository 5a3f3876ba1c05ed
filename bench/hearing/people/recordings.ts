import { spawnSync } from 'node:child_process';
import { createHash } from 'node:crypto';
import { closeSync, existsSync, mkdirSync, openSync, readFileSync, readSync, renameSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { z } from 'zod';
import { speechRateHz } from '../../../src/voice/resample.ts';

/** A recording of a person, or of a noise, in a folder that is not part of this repository. */
export interface Clip {
  /** File of the pack that it lies in. */
  readonly pack: string;
  readonly startSample: number;
  readonly lengthSamples: number;
  /** `talk` has no transcript. */
  readonly kind: 'speech' | 'talk' | 'noise';
  /** The words, in lower case and numbers spelled; of a noise, what it is. */
  readonly text: string;
  /** Empty when nobody knows; of a noise, its original recording. */
  readonly speaker: string;
  readonly split: 'train' | 'dev' | 'test';
  readonly source: string;
}

/** Folders that cannot be used: one sentence, which and why. */
export class RecordingsError extends Error {}

const sample = z.string().regex(/^\d+$/).transform(Number);
const rowSchema = z.object({
  pack: z.string().regex(/^[\w.-]+\.opus$/),
  startSample: sample,
  lengthSamples: sample,
  kind: z.enum(['speech', 'talk', 'noise']),
  text: z.string(),
  speaker: z.string(),
  split: z.enum(['train', 'dev', 'test']),
  source: z.string(),
});

/**
 * The clips that the `index.tsv` of a folder lists; its packs lie beside it or in `packs/`.
 * @throws RecordingsError naming the line that cannot be read.
 */
export function clipsIn(folder: string): readonly Clip[] {
  const file = join(folder, 'index.tsv');
  if (!existsSync(file))
    throw new RecordingsError(`${folder} has no index.tsv; name a folder of recordings.`);
  const [head = '', ...lines] = readFileSync(file, 'utf8').trimEnd().split('\n');
  const columns = head.split('\t');
  return lines.map((line, i) => {
    const cells = line.split('\t');
    const row = rowSchema.safeParse(Object.fromEntries(columns.map((name, c) => [name, cells[c]])));
    if (!row.success) {
      throw new RecordingsError(
        `${file}, line ${i + 2}: ${z.prettifyError(row.error).replaceAll('\n', ' ')}`,
      );
    }
    const pack = [join(folder, 'packs', row.data.pack), join(folder, row.data.pack)].find(existsSync);
    if (pack === undefined)
      throw new RecordingsError(`${file}, line ${i + 2}: there is no ${row.data.pack}.`);
    return { ...row.data, pack };
  });
}

const cache = fileURLToPath(new URL('../../../.cache/people/', import.meta.url));
const decoded = new Map<string, string>();

/** A pack as 16-bit samples at 16 kHz; decoded once, and kept by what it holds. */
function decodedFile(pack: string): string {
  const known = decoded.get(pack);
  if (known !== undefined) return known;
  const key = createHash('sha256').update(readFileSync(pack)).digest('hex').slice(0, 32);
  const file = join(cache, `${key}.raw`);
  if (!existsSync(file)) {
    mkdirSync(cache, { recursive: true });
    const partial = `${file}.${process.pid}`;
    const out = openSync(partial, 'w');
    // Without a name for its output, what it writes has no header.
    const how = ['--quiet', '--no-dither', '--rate', String(speechRateHz)];
    const run = spawnSync('opusdec', [...how, pack, '-'], { stdio: ['ignore', out, 'ignore'] });
    closeSync(out);
    if (run.status !== 0) {
      throw new RecordingsError(
        `opusdec could not decode ${pack}; is the Debian package opus-tools installed?`,
      );
    }
    renameSync(partial, file);
  }
  decoded.set(pack, file);
  return file;
}

/** The sound of a clip, at 16 kHz. */
export function soundOf({ pack, startSample, lengthSamples }: Clip): Float32Array {
  const bytes = new Int16Array(lengthSamples);
  const file = openSync(decodedFile(pack), 'r');
  try {
    readSync(file, bytes, 0, bytes.byteLength, 2 * startSample);
  } finally {
    closeSync(file);
  }
  return Float32Array.from(bytes, sample => sample / 32_768);
}
