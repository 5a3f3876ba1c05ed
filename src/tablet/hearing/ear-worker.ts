import createModule from 'soundswallower';
import { VoiceError } from '../../voice/errors.ts';
import { readWeights } from '../../voice/phone-network/weights.ts';
import type { SoundRecognizer } from '../../voice/ports.ts';
import { createEar } from '../../voice/recognizers/soundswallower/ear.ts';
import type { FromEar, ToEar } from './messages.ts';

type Load = Extract<ToEar, { readonly kind: 'load' }>;

const tell = (message: FromEar) => self.postMessage(message);

const sentenceOf = (cause: unknown) => (cause instanceof Error ? cause.message : String(cause));

async function load({ model, network }: Load): Promise<SoundRecognizer> {
  const weights = await fetch(network).catch(() => undefined);
  if (!weights?.ok) {
    throw new VoiceError(
      'modelUnusable',
      'The model of the recognizer could not be loaded; connect to the server once, or answer by touch.',
    );
  }
  const module = await createModule({
    // What goes wrong is said in one sentence by whoever catches it.
    print: () => {},
    printErr: () => {},
  });
  return createEar({ module, model }, { network: readWeights(new Uint8Array(await weights.arrayBuffer())) });
}

let ear: SoundRecognizer | undefined;
/** The turn of the grammar that is listened by. */
let turn = 0;

async function take(message: ToEar): Promise<void> {
  switch (message.kind) {
    case 'load':
      ear = await load(message);
      ear.onHeard(heard => tell({ kind: 'heard', turn, heard }));
      ear.onLevel(level => tell({ kind: 'level', level }));
      tell({ kind: 'ready' });
      return;
    case 'sound':
      message.port.onmessage = ({ data }: MessageEvent<Float32Array>) => {
        ear
          ?.hear({ samples: data, sampleRateHz: message.sampleRateHz })
          .catch((cause: unknown) => tell({ kind: 'failed', sentence: sentenceOf(cause) }));
      };
      return;
    case 'listen':
      ear?.listen(message.grammar);
      turn = message.turn;
      return;
    case 'onlyStop':
      ear?.onlyStop(message.active);
  }
}

self.addEventListener('message', (event: MessageEvent<ToEar>) => {
  take(event.data).catch((cause: unknown) => tell({ kind: 'failed', sentence: sentenceOf(cause) }));
});
