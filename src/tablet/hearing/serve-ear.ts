import { createEngineListener, type EngineListener } from '../../session/engine-ear/listener.ts';
import type { HeardLanguage, SoundRecognizer } from '../../voice/ports.ts';
import type { FromEar, ToEar } from './messages.ts';

const tell = (message: FromEar) => self.postMessage(message);

const sentenceOf = (cause: unknown) => (cause instanceof Error ? cause.message : String(cause));

/** Lets this thread be the ear of a page: `load` makes the recognizer from what the page calls its model, for a language. */
export function serveEar(load: (model: string, language: HeardLanguage) => Promise<SoundRecognizer>): void {
  let ear: SoundRecognizer | undefined;
  let engine: EngineListener | undefined;
  /** Which load is the last that was asked for. */
  let loads = 0;
  /** The turn of the grammar that is listened by. */
  let turn = 0;

  async function take(message: ToEar): Promise<void> {
    switch (message.kind) {
      case 'load': {
        loads += 1;
        const mine = loads;
        const loaded = await load(message.model, message.language);
        if (mine !== loads) return loaded.close();
        ear?.close();
        ear = loaded;
        ear.onHeard(heard => tell({ kind: 'heard', turn, heard }));
        ear.onVoice?.(heard => tell({ kind: 'voice', heard }));
        ear.onLevel(level => tell({ kind: 'level', level }));
        tell({ kind: 'ready' });
        return;
      }
      case 'sound':
        message.port.onmessage = ({ data }: MessageEvent<Float32Array>) => {
          const block = { samples: data, sampleRateHz: message.sampleRateHz };
          // Without an ear for the engine people read its gauges, as ever.
          engine?.hear(block).catch(() => {
            engine = undefined;
          });
          ear?.hear(block).catch((cause: unknown) => tell({ kind: 'failed', sentence: sentenceOf(cause) }));
        };
        return;
      case 'listen':
        ear?.listen(message.grammar);
        turn = message.turn;
        return;
      case 'onlyStop':
        ear?.onlyStop(message.active);
        return;
      case 'engine':
        engine?.close();
        engine = createEngineListener(message.firing, heard => tell({ kind: 'engine', heard }));
    }
  }

  self.addEventListener('message', (event: MessageEvent<ToEar>) => {
    take(event.data).catch((cause: unknown) => tell({ kind: 'failed', sentence: sentenceOf(cause) }));
  });
}
