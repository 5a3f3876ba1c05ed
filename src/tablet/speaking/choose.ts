import type { Clock } from '../../session/clock.ts';
import { voiceLanguage } from '../../voice/languages/index.ts';
import type { SpokenLanguage } from '../../voice/ports.ts';
import { CachedSynthesizer } from '../../voice/speakers/cached-synthesizer.ts';
import { readInSilence } from '../../voice/speakers/read-in-silence.ts';
import { SilentSink } from '../../voice/speakers/silent-sink.ts';
import { SpeechQueue } from '../../voice/speech-queue.ts';
import { words } from '../words/index.ts';
import { EmbeddedVoice } from './embedded-voice.ts';
import { Loudspeaker } from './loudspeaker.ts';
import { SystemVoice, systemVoices } from './system-voice.ts';

const SENTENCES_KEPT = 200;

export interface Speaking {
  readonly speech: SpeechQueue;
  readonly description: string;
  /** Nothing is heard of it. */
  readonly silent?: boolean;
  /** What people have to know of it. */
  readonly remark?: string;
  close(): Promise<void>;
}

/** Nothing is heard, but every sentence takes its time. */
function silence(clock: Pick<Clock, 'nowMs' | 'sleep'>, remark?: string): Speaking {
  const sink = new SilentSink((ms, signal) => clock.sleep(ms, signal));
  const speech = new SpeechQueue(readInSilence, sink, () => clock.nowMs());
  return {
    speech,
    description: sink.description,
    silent: true,
    ...(remark === undefined ? {} : { remark }),
    close: () => speech.close(),
  };
}

/**
 * One voice for the whole session: the device's own if it has one that works without a network, otherwise
 * the one that comes with the page.
 */
export async function chooseVoice(
  wish: 'voice' | 'silent',
  language: SpokenLanguage,
  context: AudioContext | null,
  clock: Pick<Clock, 'nowMs' | 'sleep'>,
): Promise<Speaking> {
  if (wish === 'silent' || !context) return silence(clock);
  const [first] = await systemVoices(language);
  const system = first && new SystemVoice(first);
  if (system && (await system.works())) {
    const speech = new SpeechQueue(system, system, () => clock.nowMs());
    return { speech, description: system.description, close: () => speech.close() };
  }
  // Read by an English voice another language is not understood, and may be misunderstood.
  if (voiceLanguage(language).voice !== 'embedded') return silence(clock, words.hearing.noVoice);
  const voice = new EmbeddedVoice();
  const speech = new SpeechQueue(new CachedSynthesizer(voice, SENTENCES_KEPT), new Loudspeaker(context), () =>
    clock.nowMs(),
  );
  return {
    speech,
    description: 'the embedded voice',
    async close() {
      await speech.close();
      voice.close();
    },
  };
}
