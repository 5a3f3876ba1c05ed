import { VoiceError } from '../../voice/errors.ts';
import english from '../../voice/phone-network/model/english.bin?url';
import french from '../../voice/phone-network/model/french.bin?url';
import { readWeights, type Weights } from '../../voice/phone-network/weights.ts';
import type { HeardLanguage } from '../../voice/ports.ts';
import voices from '../../voice/who-speaks/model/voices.bin?url';
import { voiceNetworkMark } from '../../voice/who-speaks/voice-network.ts';

const addresses: Readonly<Record<HeardLanguage, string>> = { en: english, fr: french };

/** A file from beside the page. @throws VoiceError `modelUnusable` when it is not there. */
async function fetchBytes(address: string): Promise<Uint8Array> {
  const answer = await fetch(new URL(address, self.location.origin)).catch(() => undefined);
  if (answer?.ok) return new Uint8Array(await answer.arrayBuffer());
  throw new VoiceError(
    'modelUnusable',
    'The model of the recognizer could not be loaded; connect to the server once, or answer by touch.',
  );
}

/**
 * The phone network of a language, from beside the page.
 * @throws VoiceError `modelUnusable` when it is not there, or damaged.
 */
export const fetchNetwork = async (language: HeardLanguage): Promise<Weights> =>
  readWeights(await fetchBytes(addresses[language]));

/**
 * The network that tells voices apart, from beside the page.
 * @throws VoiceError `modelUnusable` when it is not there, or damaged.
 */
export const fetchVoiceNetwork = async (): Promise<Weights> =>
  readWeights(await fetchBytes(voices), voiceNetworkMark);
