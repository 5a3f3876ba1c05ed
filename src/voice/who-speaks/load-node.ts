import { readFile } from 'node:fs/promises';
import { fileURLToPath } from 'node:url';
import { VoiceError } from '../errors.ts';
import { readWeights, type Weights } from '../phone-network/weights.ts';
import { voiceNetworkMark } from './voice-network.ts';

/** The file of the weights that tell voices apart. */
const packagedVoices = fileURLToPath(new URL('./model/voices.bin', import.meta.url));

/** The weights that tell voices apart, in Node. @throws VoiceError `modelUnusable` when the file is missing or damaged. */
export async function loadVoiceWeights(path: string = packagedVoices): Promise<Weights> {
  const bytes = await readFile(path).catch((cause: unknown) => {
    throw new VoiceError(
      'modelUnusable',
      `The voice network's file ${path} cannot be read; install first-fire again.`,
      { cause },
    );
  });
  return readWeights(bytes, voiceNetworkMark);
}
