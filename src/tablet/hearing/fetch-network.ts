import { VoiceError } from '../../voice/errors.ts';
import english from '../../voice/phone-network/model/english.bin?url';
import french from '../../voice/phone-network/model/french.bin?url';
import { readWeights, type Weights } from '../../voice/phone-network/weights.ts';
import type { HeardLanguage } from '../../voice/ports.ts';

const addresses: Readonly<Record<HeardLanguage, string>> = { en: english, fr: french };

/**
 * The phone network of a language, from beside the page.
 * @throws VoiceError `modelUnusable` when it is not there, or damaged.
 */
export async function fetchNetwork(language: HeardLanguage): Promise<Weights> {
  const answer = await fetch(new URL(addresses[language], self.location.origin)).catch(() => undefined);
  if (answer?.ok) return readWeights(new Uint8Array(await answer.arrayBuffer()));
  throw new VoiceError(
    'modelUnusable',
    'The model of the recognizer could not be loaded; connect to the server once, or answer by touch.',
  );
}
