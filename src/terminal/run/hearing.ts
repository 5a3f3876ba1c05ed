import { setImmediate } from 'node:timers/promises';
import { stateName } from '../../../machines/moment.ts';
import type { Clock } from '../../session/clock.ts';
import { loadCueSheet } from '../../session/cue-sheet.ts';
import { CueSource } from '../../session/cue-source.ts';
import type { Session } from '../../session/session.ts';
import type { VirtualClock } from '../../session/virtual-clock.ts';
import { durationMs } from '../../voice/audio/blocks.ts';
import { openMicrophone } from '../../voice/audio/capture-source.ts';
import { openWavFile } from '../../voice/audio/file-source.ts';
import { keepAsWav } from '../../voice/audio/wav-tee.ts';
import type { AudioSource, Pcm, SoundRecognizer, SourceEnd } from '../../voice/ports.ts';
import type { RunOptions } from './options.ts';

/**
 * The sound that the session hears: a microphone, a WAV file, or a recorded session (a cue sheet).
 * @throws VoiceError when it cannot be opened
 */
export async function openSource(
  options: Pick<RunOptions, 'hear' | 'fast' | 'device' | 'keepAudio'>,
  session: Session,
  clock: Clock,
): Promise<AudioSource> {
  const source = await openPlainSource(options, session, clock);
  return options.keepAudio
    ? keepAsWav(source, options.keepAudio, sentence => session.report(sentence))
    : source;
}

async function openPlainSource(
  { hear, fast, device }: Pick<RunOptions, 'hear' | 'fast' | 'device'>,
  session: Session,
  clock: Clock,
): Promise<AudioSource> {
  if (hear === undefined) return openMicrophone(device === undefined ? {} : { device });
  if (!hear.endsWith('.json')) return openWavFile(hear, fast ? 'fast' : 'realTime');
  return new CueSource(
    hear,
    await loadCueSheet(hear),
    () => ({ key: stateName(session.moment), speaking: session.speaking }),
    {
      nowMs: () => clock.nowMs(),
      ...(fast ? {} : { waitUntilMs: (atMs: number) => clock.sleep(atMs - clock.nowMs()) }),
    },
  );
}

/**
 * The same sound, given to a second listener too: after the first, whom it cannot fail.
 * @param onFailed told once, in one sentence, why the second hears no more
 */
export function alsoHeardBy(
  source: AudioSource,
  hear: (block: Pcm) => Promise<void>,
  onFailed: (sentence: string) => void,
): AudioSource {
  let works = true;
  const failed = (error: unknown) => {
    works = false;
    onFailed(error instanceof Error ? error.message : String(error));
  };
  return {
    description: source.description,
    run: onBlock =>
      source.run(async block => {
        const first = onBlock(block);
        if (works) await hear(block).catch(failed);
        await first;
      }),
    close: () => source.close(),
  };
}

/** Feeds sound to the recognizer at the pace at which it comes. */
export const hearLive = (source: AudioSource, ear: SoundRecognizer): Promise<SourceEnd> =>
  source.run(block => ear.hear(block));

/**
 * Feeds sound as fast as it can be understood. The sound itself is the clock: every block moves session
 * time on by its own length, so that the run is the same as in real time, only sooner.
 * @param quiet settles when nothing is being worked on outside of session time
 */
export const hearFast = (
  source: AudioSource,
  ear: SoundRecognizer,
  clock: VirtualClock,
  quiet: () => Promise<void>,
): Promise<SourceEnd> =>
  source.run(async block => {
    clock.advance(durationMs(block));
    await setImmediate();
    await quiet();
    await ear.hear(block);
    await quiet();
  });
