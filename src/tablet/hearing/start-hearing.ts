import type { EngineHeard } from '../../engineering/engine-sound/ear.ts';
import type { Firing } from '../../engineering/engine-sound/firing.ts';
import type { EarLevel, HeardLanguage, Recognizer } from '../../voice/ports.ts';
import { earThread } from './ear-thread.ts';
import { type Microphone, openMicrophone } from './microphone.ts';
import { type EarThread, WorkerRecognizer } from './worker-recognizer.ts';

/** Listens for an engine that fires so, in place of the one before. */
export type ListenToEngine = (firing: Firing, take: (heard: EngineHeard) => void) => void;

/** What wants to hear, and to be told of what does not work. */
export interface Listener {
  attach(recognizer: Recognizer): void;
  listensWith(source: string): void;
  level(level: EarLevel): void;
  report(sentence: string): void;
  /** Given, where sound itself is heard, what listens for an engine in it: to be called for each engine. */
  hearsEngines?(listen: ListenToEngine): void;
}

export interface Hearing {
  close(): void;
}

const KEYS = 'keys';

export interface HearingParts {
  readonly recognizer: WorkerRecognizer;
  readonly thread: EarThread;
  readonly context: AudioContext;
  readonly listener: Listener;
  /** What recognizes, to be shown beside the microphone; the embedded recognizer needs no name. */
  readonly engine?: string;
}

/** Gives a recognizer's thread the microphone. What fails is told once; the session goes on by touch. */
export function hearWith({ recognizer, thread, context, listener, engine }: HearingParts): Hearing {
  let microphone: Microphone | undefined;
  let closed = false;
  const giveUp = (sentence: string) => {
    listener.listensWith(KEYS);
    listener.report(sentence);
  };
  const shown = ({ description }: Microphone) =>
    engine === undefined ? description : `${description}, ${engine}`;
  const listens = () => {
    if (microphone && recognizer.ready) listener.listensWith(shown(microphone));
  };
  recognizer.onLevel(level => listener.level(level));
  recognizer.onTrouble(giveUp);
  recognizer.onReady(listens);
  recognizer.onAway(() => listener.listensWith(KEYS));
  listener.attach(recognizer);
  listener.hearsEngines?.((firing, take) => recognizer.listenToEngine(firing, take));
  openMicrophone(context).then(
    opened => {
      microphone = opened;
      if (closed) return opened.close();
      const { port, sampleRateHz } = opened;
      thread.post({ kind: 'sound', port, sampleRateHz }, [port]);
      listens();
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

/** The embedded recognizer on the microphone; it begins with this language, and follows what it is asked to listen for. */
export function startEmbedded(context: AudioContext, language: HeardLanguage, listener: Listener): Hearing {
  const thread = earThread(new Worker(new URL('./ear-worker.ts', import.meta.url), { type: 'module' }));
  const recognizer = new WorkerRecognizer(thread);
  const hearing = hearWith({ recognizer, thread, context, listener });
  recognizer.load(language);
  return hearing;
}
