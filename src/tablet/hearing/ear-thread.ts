import type { FromEar, ToEar } from './messages.ts';
import type { EarThread } from './worker-recognizer.ts';

/** A worker that listens, as the recognizer sees it. */
export function earThread(worker: Worker): EarThread {
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
