import { isOver } from '../../../machines/moment.ts';
import { languages } from '../../../prompts/index.ts';
import type { BusSource } from '../../bus/ports.ts';
import type { VehicleBus } from '../../profile/schema.ts';
import type { RecordLog } from '../../record/index.ts';
import type { Clock } from '../../session/clock.ts';
import { firingOf, joinEngineEar } from '../../session/engine-ear/join-engine-ear.ts';
import { createEngineListener } from '../../session/engine-ear/listener.ts';
import type { SessionHeader } from '../../session/header.ts';
import { callerAtShared } from '../../session/hearing.ts';
import type { Restored } from '../../session/resume.ts';
import { closeRecord, saveRecord } from '../../session/save-record.ts';
import { Session } from '../../session/session.ts';
import { joinBus } from '../../session/vehicle/join-bus.ts';
import { Viewer } from '../../session/viewer.ts';
import { VirtualClock } from '../../session/virtual-clock.ts';
import { joinVoices } from '../../session/who-speaks/join-voices.ts';
import { fill } from '../../session/wording.ts';
import { VoiceError } from '../../voice/errors.ts';
import { isHeard, voiceLanguage } from '../../voice/languages/index.ts';
import type { AudioSource, SoundRecognizer } from '../../voice/ports.ts';
import { createTypedRecognizer } from '../../voice/recognizers/typed.ts';
import { adaptedTo } from '../../voice/speaker-profile/adapted-ear.ts';
import type { SpeakerProfile } from '../../voice/speaker-profile/profile.ts';
import type { ChosenVoice } from '../../voice/speakers/choose-voice.ts';
import { type FaceWords, faceWords } from '../face/words/index.ts';
import { askPlace } from './ask-place.ts';
import { endBySignal, type SignalHooks } from './end-by-signal.ts';
import { goOnWith } from './go-on-with.ts';
import { alsoHeardBy, hearFast, hearLive, type ReadySound } from './hearing.ts';
import { keysInTurn } from './keys-in-turn.ts';
import type { RunOptions } from './options.ts';
import { besidePastStarts } from './past-starts.ts';
import { HOW_TO_SAVE, savePlace } from './save-words.ts';
import { openSpeaking } from './speaking.ts';
import { WhoAnswers } from './who-answers.ts';

/** How a run of the program ends. */
export type RunEnd = 'signedOff' | 'ended' | 'left';

export interface RunResult {
  readonly end: RunEnd;
  /** Sentences to be read after the face has closed. */
  readonly closing: readonly string[];
}

export interface RunParts {
  readonly options: RunOptions;
  readonly header: SessionHeader;
  readonly record: RecordLog;
  readonly clock: Clock;
  readonly voice: ChosenVoice;
  /** What is heard, already looked at. */
  readonly sound: ReadySound;
  readonly bus?: BusSource | undefined;
  /** Whose voice it is, where that was measured. */
  readonly speaker: SpeakerProfile | null;
  readonly restored?: Restored;
  /** A line of the record that an interruption had cut short, in words. */
  readonly setAside?: string | null;
  /** A virtual technician answers: nobody needs to be at the keys. */
  readonly byItself?: boolean;
  /** Starts what goes along with the session, and gives what ends it. */
  readonly beside?: (session: Session, viewer: Viewer) => () => Promise<void>;
}

/** Runs a session in this terminal until it is over or left; its record is closed whatever happens. */
export async function runSession(parts: RunParts): Promise<RunResult> {
  const { record, options } = parts;
  const words = faceWords[parts.header.language];
  const closing = (how: RunEnd) => closingWords(how, record, options, words);
  const signals = endBySignal(record, () => closing('left'));
  let end: RunEnd;
  try {
    end = await joinParts(parts, signals);
  } catch (error) {
    signals.unhook();
    const elsewhere = await closeRecord(record, askPlace);
    if (elsewhere !== undefined) console.error(elsewhere);
    throw error;
  }
  signals.unhook();
  const elsewhere = await closeRecord(record, askPlace);
  return {
    end,
    closing: [...(elsewhere ? [elsewhere] : []), ...closing(end)],
  };
}

/** Joins the machine with its ports and a terminal. */
async function joinParts(
  {
    options,
    header,
    record,
    clock,
    voice,
    sound,
    bus,
    speaker,
    restored,
    setAside,
    byItself,
    beside,
  }: RunParts,
  signals: SignalHooks,
): Promise<RunEnd> {
  const virtual = clock instanceof VirtualClock ? clock : null;
  const speaking = await openSpeaking(options, voice, clock, virtual !== null);
  const session = new Session(
    {
      ...header,
      language: languages[header.language],
      clock,
      record,
      speech: speaking.speech,
      notKept: ({ message }) => `${message} ${HOW_TO_SAVE}`,
    },
    restored?.moment,
    restored?.leftAt,
  );
  const words = faceWords[header.language];
  const viewer = new Viewer(session, words.keysOnly, options.silent);
  const keys = keysInTurn(createTypedRecognizer(), () => session.grammar('keys').key);
  session.attach(keys, 'keys');

  let leave: (end: RunEnd) => void = () => {};
  const left = new Promise<RunEnd>(resolve => {
    leave = resolve;
  });
  const answers = new WhoAnswers(['keys', 'sound', ...(byItself ? (['itself'] as const) : [])]);
  let ending = false;
  void answers.nobody.then(() => {
    // Whoever has left closes the ear too.
    if (ending) return;
    session.report(words.nobodyAnswers);
    leave('left');
  });
  let microphoneHears = false;
  /** Told once it is sure that somebody hears: the keys may end before the microphone is open. */
  const tellKeysEnded = () => {
    if (microphoneHears && !answers.has('keys')) session.report(words.keysEnded);
  };
  for (const remark of [
    ...speaking.remarks,
    ...(setAside ? [setAside] : []),
    ...(restored && header.rehearsal ? [faceWords[header.language].modelGone] : []),
  ])
    session.report(remark);
  await session.begin();
  const compared = besidePastStarts(session, header);
  // Only now: the first sentence is in the making while the face and the ear are loaded.
  const { showFace } = await import('../face/show.ts');
  const face = showFace(
    { view: () => viewer.view(), watch: changed => viewer.watch(changed), isAsked: () => keys.isAsked() },
    words,
    {
      onType: text => {
        const place = savePlace(text);
        if (place === undefined) keys.type(text);
        else void saveRecord(record, place).then(sentence => session.report(sentence));
      },
      onStop: () => session.receive({ type: 'stop' }, callerAtShared(session.moment), 'keys'),
      onLeave: () => {
        signals.interrupted = null;
        leave('left');
      },
      onKeysEnded: () => {
        answers.gone('keys');
        tellKeysEnded();
      },
    },
    { stdin: process.stdin, stdout: process.stdout },
  );
  signals.interrupted = () => face.interrupt();

  const closeBus = bus && header.profile.bus ? startBus(bus, header.profile.bus) : () => {};
  const leaveBeside = beside?.(session, viewer);
  const hearing = startHearing();
  try {
    return await Promise.race([session.outcome, left, hearing.failed]);
  } finally {
    ending = true;
    signals.interrupted = null;
    closeBus();
    await leaveBeside?.();
    await hearing.close();
    await compared;
    face.close();
    await face.done;
    await speaking.speech.close();
    await session.settled();
    // Time that still runs in the session that was left would keep the program from ending.
    clock.setAlarm(null, () => {});
  }

  /** The vehicle bus, for what it can read by itself. */
  function startBus(source: BusSource, described: VehicleBus): () => void {
    const link = joinBus(session, source, described, () => viewer.showsBus(link));
    return () => link.close();
  }

  function withEngineEar(sound: AudioSource): AudioSource {
    const engineEar = joinEngineEar(session, () => viewer.showsEngineEar(engineEar));
    const listener = createEngineListener(firingOf(header.profile), heard => engineEar.take(heard));
    return alsoHeardBy(
      sound,
      block => listener.hear(block),
      why => session.report(`The engine is no longer listened for: ${why}`),
    );
  }

  function soundEnded(): Promise<never> {
    answers.gone('sound');
    return new Promise<never>(() => {});
  }

  /** The microphone or the recording. Whatever fails is said once; the session goes on by keys. */
  function startHearing() {
    const opened: { source?: AudioSource; ear?: SoundRecognizer } = {};
    const listening = (async () => {
      if (!options.mic && options.hear === undefined) return;
      const { caution } = voiceLanguage(header.language);
      if (caution) session.report(caution);
      if (!isHeard(header.language)) return viewer.listensWith(words.keysOnly);
      const { createEmbeddedRecognizer } = await import('../../voice/recognizers/embedded.ts');
      const { adaptation } = speaker ?? {};
      const plain = await createEmbeddedRecognizer({
        language: header.language,
        trailingSilenceMs: adaptation?.trailingSilenceMs,
      });
      const ear = adaptation ? adaptedTo(adaptation, plain) : plain;
      opened.ear = ear;
      const plainSound = await sound(session, clock);
      // The engine of a rehearsal makes its sound itself: what runs in the room is another one.
      const source = header.rehearsal ? plainSound : withEngineEar(plainSound);
      opened.source = source;
      if (ending) return;
      ear.onLevel(level => {
        viewer.level(level);
        session.level(level);
      });
      session.attach(ear, 'voice');
      const voices = joinVoices(session);
      ear.onVoice?.(heard => voices.hears(heard));
      viewer.listensWith(options.hear === undefined ? words.microphone : source.description);
      microphoneHears = options.hear === undefined;
      tellKeysEnded();
      const quiet = async () => {
        await session.settled();
        await speaking.quiet();
      };
      const end = virtual ? await hearFast(source, ear, virtual, quiet) : await hearLive(source, ear);
      // The session is over, and so has the sound been ended.
      if (ending || isOver(session.moment)) return;
      viewer.listensWith(words.keysOnly);
      microphoneHears = false;
      if (end.kind === 'lost') session.report(end.reason);
      else if (options.hear !== undefined) session.report('The recording is over; answer by keys.');
    })();
    const failed = listening.then(
      () => {
        // A run from a file with nobody at the keys has nothing more to wait for.
        if (options.hear !== undefined && !process.stdin.isTTY) leave('left');
        return soundEnded();
      },
      (error: unknown) => {
        // A file that was named and cannot be used ends the run; a missing microphone does not.
        if (!(error instanceof VoiceError) || options.hear !== undefined) throw error;
        viewer.listensWith(words.keysOnly);
        session.report(error.message);
        return soundEnded();
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
}

function closingWords(
  end: RunEnd,
  { path, entries, lastHash }: RecordLog,
  options: RunOptions,
  { closing }: FaceWords,
): string[] {
  return [
    fill(closing[end], { goOnWith: goOnWith(path, options) }),
    fill(closing.record, { path, entries: String(entries), hash: lastHash ?? '' }),
  ];
}
