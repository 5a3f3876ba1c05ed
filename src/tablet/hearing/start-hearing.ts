import type { EngineHeard } from '../../engineering/engine-sound/ear.ts';
import type { Firing } from '../../engineering/engine-sound/firing.ts';
import type { EarLevel, HeardLanguage, Recognizer } from '../../voice/ports.ts';
import { earThread } from './ear-thread.ts';
import { type Microphone, openMicrophone } from './microphone.ts';
import { LOOK_EVERY_MS, SoundWatch } from './sound-watch.ts';
import { type EarThread, WorkerRecognizer } from './worker-recognizer.ts';

/** Listens for an engine that fires so, in place of the one before. */
export type ListenToEngine = (firing: Firing, take: (heard: EngineHeard) => void) => void;

/** What wants to hear, and to be told of what does not work. */
export interface Listener {
  attach(recognizer: Recognizer): void;
  listensWith(source: string): void;
  level(level: EarLevel): void;
  /** Its microphone is open, and no sound comes from it: until it is told otherwise. */
  noSound(isMissing: boolean): void;
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

/**
 * Gives a recognizer's thread the microphone. It hears where sound comes, and only there is it said to. What fails is told
 * once; the session goes on by touch.
 */
export function hearWith({ recognizer, thread, context, listener, engine }: HearingParts): Hearing {
  let microphone: Microphone | undefined;
  let watch: SoundWatch | undefined;
  let looking: ReturnType<typeof setInterval> | undefined;
  let closed = false;
  /** Told why it does not hear; no sound is a reason any more. */
  let gaveUp = false;
  let lost = false;
  const giveUp = (sentence: string) => {
    gaveUp = true;
    listener.listensWith(KEYS);
    listener.noSound(false);
    listener.report(sentence);
  };
  const shown = ({ description }: Microphone) =>
    engine === undefined ? description : `${description}, ${engine}`;
  const look = () => {
    if (closed || gaveUp || !microphone || !watch || !recognizer.ready) return;
    listener.listensWith(watch.sound === 'comes' ? shown(microphone) : KEYS);
    listener.noSound(watch.sound === 'missing');
  };
  recognizer.onLevel(level => {
    watch?.came();
    if (watch?.sound === 'comes') listener.level(level);
  });
  recognizer.onTrouble(giveUp);
  recognizer.onReady(() => {
    gaveUp = lost;
    watch?.again();
    look();
  });
  recognizer.onAway(() => listener.listensWith(KEYS));
  listener.attach(recognizer);
  listener.hearsEngines?.((firing, take) => recognizer.listenToEngine(firing, take));
  openMicrophone(context).then(
    opened => {
      microphone = opened;
      if (closed) return opened.close();
      const { port, sampleRateHz } = opened;
      thread.post({ kind: 'sound', port, sampleRateHz }, [port]);
      watch = new SoundWatch(() => performance.now(), look);
      opened.onHeldBack(isHeldBack => watch?.holds(isHeldBack));
      looking = setInterval(() => {
        if (recognizer.ready) watch?.look();
      }, LOOK_EVERY_MS);
      opened.onLost(() => {
        lost = true;
        giveUp('The microphone is gone; connect it and reload, or answer by touch.');
      });
    },
    (cause: unknown) => giveUp(cause instanceof Error ? cause.message : String(cause)),
  );
  return {
    close() {
      closed = true;
      clearInterval(looking);
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
