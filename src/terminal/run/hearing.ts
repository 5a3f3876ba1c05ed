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
import { keepAsWav, mayKeepAsWav } from '../../voice/audio/wav-tee.ts';
import { VoiceError } from '../../voice/errors.ts';
import { isHeard } from '../../voice/languages/index.ts';
import type { AudioSource, Pcm, SoundRecognizer, SourceEnd, SpokenLanguage } from '../../voice/ports.ts';
import type { RunOptions } from './options.ts';

/** The sound of a session that has still to begin: what a file holds is in it, the microphone is opened only then. */
export type ReadySound = (session: Session, clock: Clock) => AudioSource | Promise<AudioSource>;

type SoundOptions = Pick<RunOptions, 'hear' | 'fast' | 'device' | 'keepAudio'>;

/**
 * Looks at the sound that a session is to hear, before anything of it is begun: a microphone, a WAV file, or a recorded
 * session (a cue sheet).
 * @param language what the session is held in
 * @throws VoiceError when the file cannot be read, is of another kind, nobody is heard in the language, or what is heard
 * cannot be kept where it was wished; the microphone fails only as it is opened
 */
export async function readySound(options: SoundOptions, language: SpokenLanguage): Promise<ReadySound> {
  if (options.hear !== undefined && !isHeard(language))
    throw new VoiceError('modelUnusable', `Nobody is heard in the language ${language}; leave --hear out.`);
  const ready = await readyPlainSound(options);
  const { keepAudio } = options;
  if (keepAudio === undefined) return ready;
  await mayKeepAsWav(keepAudio);
  return async (session, clock) =>
    keepAsWav(await ready(session, clock), keepAudio, sentence => session.report(sentence));
}

async function readyPlainSound({ hear, fast, device }: SoundOptions): Promise<ReadySound> {
  if (hear === undefined) return () => openMicrophone(device === undefined ? {} : { device });
  if (!hear.endsWith('.json')) {
    const sound = await openWavFile(hear, fast ? 'fast' : 'realTime');
    return () => sound;
  }
  const cues = await loadCueSheet(hear);
  return (session, clock) =>
    new CueSource(hear, cues, () => ({ key: stateName(session.moment), speaking: session.speaking }), {
      nowMs: () => clock.nowMs(),
      ...(fast ? {} : { waitUntilMs: (atMs: number) => clock.sleep(atMs - clock.nowMs()) }),
    });
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
