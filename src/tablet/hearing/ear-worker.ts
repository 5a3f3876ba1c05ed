import createModule from 'soundswallower';
import { VoiceError } from '../../voice/errors.ts';
import networkAddress from '../../voice/phone-network/model/english.bin?url';
import { readWeights, type Weights } from '../../voice/phone-network/weights.ts';
import { createEar } from '../../voice/recognizers/soundswallower/ear.ts';
import { serveEar } from './serve-ear.ts';

async function fetchNetwork(): Promise<Weights> {
  const answer = await fetch(new URL(networkAddress, self.location.origin)).catch(() => undefined);
  if (answer?.ok) return readWeights(new Uint8Array(await answer.arrayBuffer()));
  throw new VoiceError(
    'modelUnusable',
    'The model of the recognizer could not be loaded; connect to the server once, or answer by touch.',
  );
}

serveEar(async model => {
  const module = await createModule({
    // What goes wrong is said in one sentence by whoever catches it.
    print: () => {},
    printErr: () => {},
  });
  return createEar({ module, model }, { network: await fetchNetwork() });
});
