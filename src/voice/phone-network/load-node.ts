import { readFile } from 'node:fs/promises';
import { fileURLToPath } from 'node:url';
import { VoiceError } from '../errors.ts';
import { readWeights, type Weights } from './weights.ts';

const file = fileURLToPath(new URL('./model/english.bin', import.meta.url));

/** The packaged weights, in Node. @throws VoiceError `modelUnusable` when the file is missing or damaged. */
export async function loadWeights(path: string = file): Promise<Weights> {
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
