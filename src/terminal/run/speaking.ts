import type { Clock } from '../../session/clock.ts';
import type { Synthesizer } from '../../voice/ports.ts';
import { CachedSynthesizer } from '../../voice/speakers/cached-synthesizer.ts';
import { chooseSink } from '../../voice/speakers/choose.ts';
import type { ChosenVoice } from '../../voice/speakers/choose-voice.ts';
import { SpeechQueue } from '../../voice/speech-queue.ts';
import type { RunOptions } from './options.ts';

/** Sentences of one session that come again and again. */
const SENTENCES_KEPT = 200;

export interface Speaking {
  readonly speech: SpeechQueue;
  /** Sentences on who speaks, or why nothing will be heard, when speech was wished for. */
  readonly remarks: readonly string[];
  /** Settles when no sentence is being made into sound. */
  quiet(): Promise<void>;
}

/** Counts what is in the making, so that session time can wait for it. */
function counted(inner: Synthesizer): Synthesizer & { quiet(): Promise<void> } {
  const busy = new Set<Promise<unknown>>();
  return {
    synthesize(text) {
      const sound = inner.synthesize(text);
      busy.add(sound);
      const done = () => busy.delete(sound);
      sound.then(done, done);
      return sound;
    },
    async quiet() {
      while (busy.size > 0) await Promise.allSettled(busy);
    },
  };
}

/**
 * The voice, to a loudspeaker, a folder of WAV files, or nowhere.
 * @throws VoiceError when a folder was named that cannot be written to
 */
export async function openSpeaking(
  { speakTo, silent }: Pick<RunOptions, 'speakTo' | 'silent'>,
  voice: ChosenVoice,
  clock: Clock,
  virtual: boolean,
): Promise<Speaking> {
  const sleep = (durationMs: number, signal?: AbortSignal) => clock.sleep(durationMs, signal);
  const { sink, notHeard } = await chooseSink({
    ...(speakTo === undefined || voice.soundless ? {} : { speakTo }),
    // Sound heard faster than real time has no loudspeaker that could keep up.
    silent: silent || voice.soundless || (virtual && speakTo === undefined),
    sleep,
  });
  const synthesizer = counted(new CachedSynthesizer(voice.synthesizer, SENTENCES_KEPT));
  return {
    speech: new SpeechQueue(synthesizer, sink, () => clock.nowMs()),
    remarks: silent ? [] : [voice.remark, notHeard].filter(remark => remark !== undefined),
    quiet: () => synthesizer.quiet(),
  };
}
