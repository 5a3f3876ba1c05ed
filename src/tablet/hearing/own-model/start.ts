import type { HeardLanguage } from '../../../voice/ports.ts';
import { earThread } from '../ear-thread.ts';
import { type Hearing, hearWith, type Listener } from '../start-hearing.ts';
import { WorkerRecognizer } from '../worker-recognizer.ts';
import EarWorker from './ear-worker.ts?worker';
import { openModel } from './model-store.ts';

/** A model of this size is unpacked and read within seconds on a tablet; after this nobody waits any longer. */
const LOADED_WITHIN_MS = 120_000;

const sentenceOf = (cause: unknown) => (cause instanceof Error ? cause.message : String(cause));

/** Loads the kept model; settles when it listens, or rejects with a sentence and leaves nothing running. */
function load(recognizer: WorkerRecognizer, language: HeardLanguage, archive: Blob) {
  const address = URL.createObjectURL(archive);
  return new Promise<void>((resolve, reject) => {
    const late = setTimeout(
      () =>
        reject(new Error('Vosk did not take its model in two minutes; bring another one in the settings.')),
      LOADED_WITHIN_MS,
    );
    const done = () => clearTimeout(late);
    recognizer.onReady(() => {
      done();
      resolve();
    });
    recognizer.onTrouble(sentence => {
      done();
      reject(new Error(sentence));
    });
    recognizer.load(language, address);
  }).finally(() => URL.revokeObjectURL(address));
}

/**
 * Listens with Vosk and the model that is kept on this device. Without one, or when it cannot be used, that is said
 * and the other recognizer listens instead.
 */
export function startOwnModel(
  context: AudioContext,
  language: HeardLanguage,
  listener: Listener,
  instead: () => Hearing,
): Hearing {
  let closed = false;
  let hearing: Hearing | undefined;
  void (async () => {
    const { about, archive } = await openModel();
    if (closed) return;
    const thread = earThread(new EarWorker());
    const recognizer = new WorkerRecognizer(thread);
    hearing = { close: () => recognizer.close() };
    try {
      await load(recognizer, language, archive);
    } catch (cause) {
      recognizer.close();
      throw cause;
    }
    if (!closed) hearing = hearWith({ recognizer, thread, context, listener, engine: about.name });
  })().catch((cause: unknown) => {
    if (closed) return;
    listener.report(`${sentenceOf(cause)} The embedded recognizer listens instead.`);
    hearing = instead();
  });
  return {
    close() {
      closed = true;
      hearing?.close();
    },
  };
}
