import createModule from 'soundswallower';
import type { SoundRecognizer } from '../../voice/ports.ts';
import { createEar } from '../../voice/recognizers/soundswallower/ear.ts';
import type { FromEar, ToEar } from './messages.ts';

const tell = (message: FromEar) => self.postMessage(message);

const sentenceOf = (cause: unknown) => (cause instanceof Error ? cause.message : String(cause));

async function load(model: string): Promise<SoundRecognizer> {
  const module = await createModule({
    // What goes wrong is said in one sentence by whoever catches it.
    print: () => {},
    printErr: () => {},
  });
  return createEar({ module, model });
}

let ear: SoundRecognizer | undefined;
/** The turn of the grammar that is listened by. */
let turn = 0;

async function take(message: ToEar): Promise<void> {
  switch (message.kind) {
    case 'load':
      ear = await load(message.model);
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
