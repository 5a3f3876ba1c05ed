import { readFile } from 'node:fs/promises';
import { fileURLToPath } from 'node:url';
import { VoiceError } from '../errors.ts';
import type { HeardLanguage } from '../ports.ts';
import { readWeights, type Weights } from './weights.ts';

const names: Readonly<Record<HeardLanguage, string>> = { en: 'english', fr: 'french' };

/** The file of a language's packaged weights. */
export const packagedNetwork = (language: HeardLanguage): string =>
  fileURLToPath(new URL(`./model/${names[language]}.bin`, import.meta.url));

/** Weights out of a file, in Node: those packaged for English unless another is named. @throws VoiceError `modelUnusable` when the file is missing or damaged. */
export async function loadWeights(path: string = packagedNetwork('en')): Promise<Weights> {
  const bytes = await readFile(path).catch((cause: unknown) => {
    throw new VoiceError(
      'modelUnusable',
      `The phone network's file ${path} cannot be read; install first-fire again.`,
      {
        cause,
      },
    );
  });
  return readWeights(bytes);
}
