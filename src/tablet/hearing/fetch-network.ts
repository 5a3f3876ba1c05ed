import { VoiceError } from '../../voice/errors.ts';
import networkAddress from '../../voice/phone-network/model/english.bin?url';
import { readWeights, type Weights } from '../../voice/phone-network/weights.ts';

/**
 * The phone network, from beside the page.
 * @throws VoiceError `modelUnusable` when it is not there, or damaged.
 */
export async function fetchNetwork(): Promise<Weights> {
  const answer = await fetch(new URL(networkAddress, self.location.origin)).catch(() => undefined);
  if (answer?.ok) return readWeights(new Uint8Array(await answer.arrayBuffer()));
  throw new VoiceError(
    'modelUnusable',
    'The model of the recognizer could not be loaded; connect to the server once, or answer by touch.',
  );
}
