import { emergencyReplies } from '../../../../machines/emergency.ts';
import { isOver, offerOf } from '../../../../machines/moment.ts';
import type { Emergency, Person } from '../../../../machines/vocabulary.ts';
import type { Language } from '../../../../prompts/types.ts';
import { emergencies } from '../../../record/vocabulary/names.ts';
import { isControl } from '../../../session/grammar.ts';
import type { Session } from '../../../session/session.ts';
import { meansStop } from '../../../session/stop-words.ts';
import type { Heard } from '../../../voice/ports.ts';
import type { Pairing } from '../../pairing/pairings.ts';
import type { Deed } from '../../protocol/index.ts';
import { Refused } from '../../refused.ts';
import type { Crew } from '../crew.ts';
import type { Run } from '../run.ts';
import { checkedHearing, clearHeard, heardInLine } from './answering.ts';
import { answerer, mayCallForHelp, mayNotControl } from './authority.ts';
import { questionOf } from './question.ts';

/** What a deed is done to. */
export interface Scene {
  readonly run: Run;
  readonly crew: Crew;
  /** Names the question that is asked now; null while an answer to it is being carried out. */
  readonly turn: string | null;
}

type HeardOnDevice = Extract<Deed, { do: 'heard' }>['heard'];
/** What a person at the engine says or touches, stops aside. */
export type SessionDeed = Extract<Deed, { do: 'say' | 'heard' | 'control' | 'clear' }>;

/** Words that mean the same whatever is asked. */
const anyTime: readonly string[] = ['hold', 'sayAgain', 'status', 'timeLeft', 'help'];

/** Whether a deed is a stop, whichever way it was said, in the language of the session. */
export function isStop(deed: Deed, language: Language): boolean {
  switch (deed.do) {
    case 'stop':
      return true;
    case 'heard':
      return deed.heard.kind === 'stop';
    case 'say':
      return meansStop(deed.text, language);
    default:
      return false;
  }
}

/**
 * Checks what a person at the engine wants, stops aside, and says how it is carried out: at once, so that nothing comes
 * between the check and the deed.
 * @throws Refused when it may not be, or cannot be
 */
export function planned(deed: SessionDeed, by: Pairing, scene: Scene): () => void {
  const { session } = scene.run;
  switch (deed.do) {
    case 'control':
      if (!anyTime.includes(deed.id)) onTime(deed.turn, scene);
      return () => session.receive({ type: deed.id }, by.role, 'touch');
    case 'clear': {
      onTime(deed.turn, scene);
      const [heard, speaker] = [clearHeard(session), speakerOf(by, scene)];
      return () => session.hear(heard, 'touch', speaker);
    }
    case 'say': {
      // Whose question it is comes before everything else that may be wrong with an answer of theirs.
      if (by.role === 'supervisor') speakerOf(by, scene);
      const heard = heardInLine(session, deed);
      if (heard === null) throw new Refused('malformed', 'Nothing was said.');
      // A call for help; a stop goes another way.
      if (heard.kind === 'stop') {
        if (!mayCallForHelp(by.role))
          throw new Refused(
            'notYourRole',
            'Whoever is at the engine calls for help; from here STOP stops it.',
          );
        return () => session.hear(heard, deed.via, by.role);
      }
      if (!isAnybodys(heard, scene)) onTime(deed.turn, scene);
      const speaker = speakerFor(heard, by, scene);
      return () => session.hear(heard, deed.via, speaker);
    }
    case 'heard': {
      const call = callIn(deed, by, scene);
      if (call !== null) return () => session.hear(call, 'voice', by.role);
      if (!isAnybodys(deed.heard, scene)) onTime(deed.turn, scene);
      const speaker = speakerFor(deed.heard, by, scene);
      if (session.hearsOnlyStop || !(session.isAsked || isAnybodys(deed.heard, scene)))
        throw new Refused(
          'notNow',
          'A voice counts only when the tool has fallen silent and the bay is quiet enough; answer by touch.',
        );
      const heard = checkedHearing(session, deed);
      return () => session.hear(heard, 'voice', speaker);
    }
  }
}

/** What somebody answers help is called for. */
const emergencyIn = (heard: Heard | HeardOnDevice) =>
  heard.kind === 'reply' ? emergencies.find(each => emergencyReplies[each] === heard.id) : undefined;

/** What a typed line calls for help for, as a stop or as an answer to what is asked. */
export function callTyped(session: Session, deed: Extract<Deed, { do: 'say' }>): Emergency | undefined {
  const heard = heardInLine(session, deed);
  if (heard === null) return undefined;
  return heard.kind === 'stop' ? emergencies.find(each => each === heard.calls) : emergencyIn(heard);
}

/**
 * Fire and injury that somebody at the engine was heard to tell, where that is no answer of theirs to what is asked now: at
 * another turn, at a device that does not lead, or while the tool speaks. Then it is taken as a stop.
 */
function callIn(
  { heard, turn }: Extract<Deed, { do: 'heard' }>,
  by: Pairing,
  scene: Scene,
): Extract<Heard, { kind: 'stop' }> | null {
  const cause = emergencyIn(heard);
  if (cause === undefined || !mayCallForHelp(by.role)) return null;
  const { session } = scene.run;
  const answers =
    (turn === scene.turn || isAnybodys(heard, scene)) &&
    !session.hearsOnlyStop &&
    (isAnybodys(heard, scene) || (session.isAsked && answererAt(by, scene).ok)) &&
    session.grammar('voice').replies.some(({ id }) => heard.kind === 'reply' && id === heard.id);
  return answers ? null : { kind: 'stop', text: heard.text, calls: cause };
}

function onTime(turn: string, scene: Scene): void {
  if (turn !== scene.turn)
    throw new Refused('tooLate', 'That answered a question that is no longer asked; look again.');
}

/** An engine that runs on, fire and injury, where they may be told: at every turn at which they may, they mean the same. */
const isAnybodys = (heard: Heard | HeardOnDevice, { run }: Scene): boolean =>
  heard.kind === 'reply' && (offerOf(run.session.moment).anybodys?.some(id => id === heard.id) ?? false);

function answererAt(by: Pairing, { run, crew }: Pick<Scene, 'run' | 'crew'>) {
  const has = { second: crew.has('second'), supervisor: crew.has('supervisor') };
  return answerer({ role: by.role, owner: crew.isOwner(by) }, questionOf(run.session.moment, has));
}

function speakerOf(by: Pairing, scene: Scene) {
  const answer = answererAt(by, scene);
  if (!answer.ok) throw new Refused(answer.refusal.code, answer.refusal.sentence);
  return answer.speaker;
}

/** Whom a stop is put down to that was said at this device: while a stop word is tried out, whoever was asked to. */
export function speaksFor(by: Pairing, scene: Pick<Scene, 'run' | 'crew'>): Person {
  const offer = offerOf(scene.run.session.moment);
  if (offer.awaits !== 'drill') return by.role;
  const answer = answererAt(by, scene);
  return answer.ok ? (answer.speaker ?? offer.by) : by.role;
}

/**
 * As whose it counts. The words that are always understood are no answers, and an engine that runs on, fire and injury
 * are anybody's to tell who is at the engine: whoever is asked, and whichever device leads, does not matter.
 */
function speakerFor(heard: Heard | HeardOnDevice, by: Pairing, scene: Scene): Person | undefined {
  if (heard.kind !== 'reply') return speakerOf(by, scene);
  if (isAnybodys(heard, scene) && mayCallForHelp(by.role)) {
    const answer = answererAt(by, scene);
    return answer.ok ? answer.speaker : by.role;
  }
  const { session } = scene.run;
  if (!isControl(session.language, heard.id)) return speakerOf(by, scene);
  const refusal = mayNotControl({ role: by.role, owner: scene.crew.isOwner(by) }, heard.id);
  if (refusal) throw new Refused(refusal.code, refusal.sentence);
  return by.role;
}

/** The session that goes on in a bay. @throws Refused when there is none */
export function running(run: Run | null): Run {
  if (run === null) throw new Refused('notNow', 'No session has begun in this bay.');
  if (isOver(run.session.moment)) throw new Refused('notNow', 'The session of this bay is over.');
  return run;
}
