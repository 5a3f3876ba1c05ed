import { isOver } from '../../../machines/moment.ts';
import type { Clock } from '../../session/clock.ts';
import { firingOf, joinEngineEar } from '../../session/engine-ear/join-engine-ear.ts';
import { createEngineListener } from '../../session/engine-ear/listener.ts';
import type { Session } from '../../session/session.ts';
import type { Viewer } from '../../session/viewer.ts';
import { VirtualClock } from '../../session/virtual-clock.ts';
import { joinVoices } from '../../session/who-speaks/join-voices.ts';
import { VoiceError } from '../../voice/errors.ts';
import { isHeard, voiceLanguage } from '../../voice/languages/index.ts';
import type { AudioSource, HeardLanguage, SoundRecognizer } from '../../voice/ports.ts';
import { adaptedTo } from '../../voice/speaker-profile/adapted-ear.ts';
import type { SpeakerProfile } from '../../voice/speaker-profile/profile.ts';
import type { FaceWords } from '../face/words/index.ts';
import { alsoHeardBy, hearFast, hearLive } from './hearing.ts';
import type { RunParts } from './run-parts.ts';
import type { Speaking } from './speaking.ts';

/** What an ear is joined to. */
interface ListeningParts {
  readonly run: Pick<RunParts, 'options' | 'header' | 'clock' | 'sound' | 'speaker'>;
  readonly session: Session;
  readonly viewer: Viewer;
  readonly words: FaceWords;
  readonly speaking: Speaking;
  /** The session is being left. */
  readonly isEnding: () => boolean;
  /** Leaves it: a recording is over, and nobody is at the keys. */
  readonly leave: () => void;
  /** Nobody is heard any more. */
  readonly soundGone: () => void;
  /** Whether a microphone hears now. */
  readonly microphoneHears: (hears: boolean) => void;
}

interface Listening {
  /** Rejects where what was named cannot be heard; never settles otherwise. */
  readonly failed: Promise<never>;
  close(): Promise<void>;
}

interface Opened {
  source?: AudioSource;
  ear?: SoundRecognizer;
}

/** Has the microphone or the recording heard. Whatever fails is said once; the session goes on by keys. */
export function startListening(parts: ListeningParts): Listening {
  const { run, session, viewer, words, leave, soundGone } = parts;
  const { hear } = run.options;
  const opened: Opened = {};
  const listening = listen(parts, opened);
  const overForGood = (): Promise<never> => {
    soundGone();
    return new Promise<never>(() => {});
  };
  const failed = listening.then(
    () => {
      // A run from a file with nobody at the keys has nothing more to wait for.
      if (hear !== undefined && !process.stdin.isTTY) leave();
      return overForGood();
    },
    (error: unknown) => {
      // A file that was named and cannot be used ends the run; a missing microphone does not.
      if (!(error instanceof VoiceError) || hear !== undefined) throw error;
      viewer.listensWith(words.keysOnly);
      session.report(error.message);
      return overForGood();
    },
  );
  // It is awaited only once the session has begun; until then a failure waits its turn.
  failed.catch(() => {});
  return {
    failed,
    async close() {
      opened.source?.close();
      await listening.catch(() => {});
      opened.ear?.close();
    },
  };
}

/** Listens until the sound is over, or the session is; nothing where nobody is to be heard. */
async function listen(parts: ListeningParts, opened: Opened): Promise<void> {
  const { run, session, viewer, words, isEnding, microphoneHears } = parts;
  const { options, header, clock, sound } = run;
  if (!options.mic && options.hear === undefined) return;
  const { language } = header;
  const { caution } = voiceLanguage(language);
  if (caution) session.report(caution);
  if (!isHeard(language)) return viewer.listensWith(words.keysOnly);
  const ear = await openEar(language, run.speaker);
  opened.ear = ear;
  const plainSound = await sound(session, clock);
  // The engine of a rehearsal makes its sound itself: what runs in the room is another one.
  const source = header.rehearsal ? plainSound : withEngineEar(plainSound, parts);
  opened.source = source;
  if (isEnding()) return;
  joinEar(ear, session, viewer);
  viewer.listensWith(options.hear === undefined ? words.microphone : source.description);
  microphoneHears(options.hear === undefined);
  const end = await hearToItsEnd(source, ear, clock, parts);
  // The session is over, and so has the sound been ended.
  if (isEnding() || isOver(session.moment)) return;
  viewer.listensWith(words.keysOnly);
  microphoneHears(false);
  if (end.kind === 'lost') session.report(end.reason);
  else if (options.hear !== undefined) session.report('The recording is over; answer by keys.');
}

async function openEar(language: HeardLanguage, speaker: SpeakerProfile | null): Promise<SoundRecognizer> {
  const { createEmbeddedRecognizer } = await import('../../voice/recognizers/embedded.ts');
  const { adaptation } = speaker ?? {};
  const plain = await createEmbeddedRecognizer({
    language,
    trailingSilenceMs: adaptation?.trailingSilenceMs,
  });
  return adaptation ? adaptedTo(adaptation, plain) : plain;
}

function joinEar(ear: SoundRecognizer, session: Session, viewer: Viewer): void {
  ear.onLevel(level => {
    viewer.level(level);
    session.level(level);
  });
  session.attach(ear, 'voice');
  const voices = joinVoices(session);
  ear.onVoice?.(heard => voices.hears(heard));
}

function withEngineEar(sound: AudioSource, { run, session, viewer }: ListeningParts): AudioSource {
  const engineEar = joinEngineEar(session, () => viewer.showsEngineEar(engineEar));
  const listener = createEngineListener(firingOf(run.header.profile), heard => engineEar.take(heard));
  return alsoHeardBy(
    sound,
    block => listener.hear(block),
    why => session.report(`The engine is no longer listened for: ${why}`),
  );
}

function hearToItsEnd(
  source: AudioSource,
  ear: SoundRecognizer,
  clock: Clock,
  { session, speaking }: ListeningParts,
) {
  if (!(clock instanceof VirtualClock)) return hearLive(source, ear);
  return hearFast(source, ear, clock, async () => {
    await session.settled();
    await speaking.quiet();
  });
}
