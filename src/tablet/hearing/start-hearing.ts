import englishNetwork from '../../voice/phone-network/model/english.bin?url';
import type { EarLevel, Recognizer } from '../../voice/ports.ts';
import type { FromEar, ToEar } from './messages.ts';
import { type Microphone, openMicrophone } from './microphone.ts';
import { modelFolder } from './model-folder.ts';
import { type EarThread, WorkerRecognizer } from './worker-recognizer.ts';

/** What wants to hear, and to be told of what does not work. */
export interface Listener {
  attach(recognizer: Recognizer): void;
  listensWith(source: string): void;
  level(level: EarLevel): void;
  report(sentence: string): void;
}

export interface Hearing {
  close(): void;
}

function earThread(): EarThread {
  const worker = new Worker(new URL('./ear-worker.ts', import.meta.url), { type: 'module' });
  return {
    post: (message: ToEar, transfer = []) => worker.postMessage(message, transfer),
    onMessage(handler) {
      worker.onmessage = (event: MessageEvent<FromEar>) => handler(event.data);
      worker.onerror = event =>
        handler({
          kind: 'failed',
          sentence: `The recognizer broke down (${event.message}); answer by touch, or reload the page.`,
        });
    },
    end: () => worker.terminate(),
  };
}

const KEYS = 'keys';

/** The embedded recognizer on the microphone. What fails is told once; the session goes on by touch. */
export function startEmbedded(context: AudioContext, listener: Listener): Hearing {
  const thread = earThread();
  const recognizer = new WorkerRecognizer(thread);
  let microphone: Microphone | undefined;
  let closed = false;
  const giveUp = (sentence: string) => {
    listener.listensWith(KEYS);
    listener.report(sentence);
  };
  recognizer.onLevel(level => listener.level(level));
  recognizer.onTrouble(giveUp);
  recognizer.onReady(() => listener.listensWith(microphone?.description ?? KEYS));
  listener.attach(recognizer);
  thread.post({
    kind: 'load',
    model: new URL(`/${modelFolder}`, location.href).href,
    network: new URL(englishNetwork, location.href).href,
  });
  openMicrophone(context).then(
    opened => {
      microphone = opened;
      if (closed) return opened.close();
      const { port, sampleRateHz } = opened;
      thread.post({ kind: 'sound', port, sampleRateHz }, [port]);
      if (recognizer.ready) listener.listensWith(opened.description);
      opened.onLost(() => giveUp('The microphone is gone; connect it and reload, or answer by touch.'));
    },
    (cause: unknown) => giveUp(cause instanceof Error ? cause.message : String(cause)),
  );
  return {
    close() {
      closed = true;
      recognizer.close();
      microphone?.close();
    },
  };
}
