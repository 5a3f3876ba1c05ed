import { languages } from '../../../prompts/index.ts';
import type { BusSource } from '../../bus/ports.ts';
import type { RecordLog } from '../../record/index.ts';
import { callerAtShared } from '../../session/hearing.ts';
import { closeRecord, saveRecord } from '../../session/save-record.ts';
import { Session } from '../../session/session.ts';
import { joinBus } from '../../session/vehicle/join-bus.ts';
import { Viewer } from '../../session/viewer.ts';
import { VirtualClock } from '../../session/virtual-clock.ts';
import { fill } from '../../session/wording.ts';
import { createTypedRecognizer } from '../../voice/recognizers/typed.ts';
import type { Face, FaceActions } from '../face/face.ts';
import { type FaceWords, faceWords } from '../face/words/index.ts';
import { askPlace } from './ask-place.ts';
import { endBySignal, type SignalHooks } from './end-by-signal.ts';
import { goOnWith } from './go-on-with.ts';
import { type KeysInTurn, keysInTurn } from './keys-in-turn.ts';
import { startListening } from './listening.ts';
import type { RunOptions } from './options.ts';
import { besidePastStarts } from './past-starts.ts';
import type { RunEnd, RunParts, RunResult } from './run-parts.ts';
import { HOW_TO_SAVE, savePlace } from './save-words.ts';
import { openSpeaking, type Speaking } from './speaking.ts';
import { WhoAnswers } from './who-answers.ts';

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
async function joinParts(parts: RunParts, signals: SignalHooks): Promise<RunEnd> {
  const { options, header, clock, voice, bus, byItself, beside } = parts;
  const speaking = await openSpeaking(options, voice, clock, clock instanceof VirtualClock);
  const session = sessionOf(parts, speaking);
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
  for (const remark of remarksBefore(parts, speaking)) session.report(remark);
  await session.begin();
  const compared = besidePastStarts(session, header);
  const face = await openFace(parts, session, viewer, keys, {
    onLeave: () => {
      signals.interrupted = null;
      leave('left');
    },
    onKeysEnded: () => {
      answers.gone('keys');
      tellKeysEnded();
    },
  });
  signals.interrupted = () => face.interrupt();

  const closeBus = bus ? startBus(bus, session, viewer) : () => {};
  const leaveBeside = beside?.(session, viewer);
  const listening = startListening({
    run: parts,
    session,
    viewer,
    words,
    speaking,
    isEnding: () => ending,
    leave: () => leave('left'),
    soundGone: () => answers.gone('sound'),
    microphoneHears: hears => {
      microphoneHears = hears;
      tellKeysEnded();
    },
  });
  try {
    return await Promise.race([session.outcome, left, listening.failed]);
  } finally {
    ending = true;
    signals.interrupted = null;
    closeBus();
    await leaveBeside?.();
    await listening.close();
    await compared;
    face.close();
    await face.done;
    await speaking.speech.close();
    await session.settled();
    // Time that still runs in the session that was left would keep the program from ending.
    clock.setAlarm(null, () => {});
  }
}

const sessionOf = ({ header, clock, record, restored }: RunParts, { speech }: Speaking): Session =>
  new Session(
    {
      ...header,
      language: languages[header.language],
      clock,
      record,
      speech,
      notKept: ({ message }) => `${message} ${HOW_TO_SAVE}`,
    },
    restored?.moment,
    restored?.leftAt,
  );

/** What has to be known before anything is asked. */
const remarksBefore = (
  { header, restored, setAside }: RunParts,
  { remarks }: Speaking,
): readonly string[] => [
  ...remarks,
  ...(setAside ? [setAside] : []),
  ...(restored && header.rehearsal ? [faceWords[header.language].modelGone] : []),
];

/** Shows the session, and takes what is typed for it. */
async function openFace(
  { header, record }: RunParts,
  session: Session,
  viewer: Viewer,
  keys: KeysInTurn,
  ends: Pick<FaceActions, 'onLeave' | 'onKeysEnded'>,
): Promise<Face> {
  // Only now: the first sentence is in the making while the face and the ear are loaded.
  const { showFace } = await import('../face/show.ts');
  return showFace(
    { view: () => viewer.view(), watch: changed => viewer.watch(changed), isAsked: () => keys.isAsked() },
    faceWords[header.language],
    {
      ...ends,
      onType: text => {
        const place = savePlace(text);
        if (place === undefined) keys.type(text);
        else void saveRecord(record, place).then(sentence => session.report(sentence));
      },
      onStop: () => session.receive({ type: 'stop' }, callerAtShared(session.moment), 'keys'),
    },
    { stdin: process.stdin, stdout: process.stdout },
  );
}

/** The vehicle bus, for what it can read by itself. */
function startBus(source: BusSource, session: Session, viewer: Viewer): () => void {
  const { bus } = session.parts.profile;
  if (!bus) return () => {};
  const link = joinBus(session, source, bus, () => viewer.showsBus(link));
  return () => link.close();
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
