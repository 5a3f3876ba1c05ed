import type { SoundRecognizer } from '../../voice/ports.ts';
import type { FromEar, ToEar } from './messages.ts';

const tell = (message: FromEar) => self.postMessage(message);

const sentenceOf = (cause: unknown) => (cause instanceof Error ? cause.message : String(cause));

/** Lets this thread be the ear of a page: `load` makes the recognizer from what the page calls its model. */
export function serveEar(load: (model: string) => Promise<SoundRecognizer>): void {
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
}
