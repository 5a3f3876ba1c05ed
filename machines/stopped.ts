import type { LineId, ReplyId, StepId } from '../prompts/types.ts';
import { emergencies } from '../src/record/vocabulary/names.ts';
import { isByHand, replyNeedsReadBack } from './assurance.ts';
import type { StopRecord } from './context.ts';
import { keptOff } from './controls.ts';
import { isEmergency } from './emergency.ts';
import { emergencyWords, withHelp } from './help.ts';
import {
  askReply,
  bySecondPerson,
  readBack,
  readBackReply,
  setAside,
  type Waiting,
} from './kinds/question.ts';
import { refusedWhileRunning } from './kinds/standing.ts';
import { isDone, NEXT, passed, stopNow } from './progress.ts';
import { doneAfterStop, putsHandsIn, reopenedSteps } from './reopening.ts';
import { confirmedOver, onwards } from './resuming.ts';
import { onceAllIsOff, stillTakenAway } from './safeguards.ts';
import type { Step } from './steps.ts';
import { type Look, type Move, type Node, note, remark, update, withMeta } from './toolkit.ts';
import { allOff, callForHelp, notOffYet, urgentWords } from './urgent.ts';
import type { Cause, PromptValue } from './vocabulary.ts';

/** What is said for each cause when it is asked for. `drill` and `toolRestarted` are never asked. */
const causeReplies: readonly (readonly [ReplyId, Cause])[] = [
  ['causeFalseAlarm', 'falseAlarm'],
  ['causeCoolantLeak', 'coolantLeak'],
  ['causeCoolantInCylinder', 'coolantInCylinder'],
  ['causeOilLeak', 'oilLeak'],
  ['causeFuelLeak', 'fuelLeak'],
  ['causeNoOilPressure', 'noOilPressure'],
  ['causeNoStart', 'noStart'],
  ['causeOverspeed', 'overspeed'],
  ['causeOverheating', 'overheating'],
  ['causeFaultCode', 'faultCode'],
  ['causeSmokeOrFire', 'smokeOrFire'],
  ['causeSomeoneHurt', 'someoneHurt'],
  ['causeKnocking', 'knocking'],
  ['causeLooseOrNoise', 'looseOrNoise'],
  ['causeOther', 'other'],
];

/** Called on every stop that somebody, or something, calls out. */
export const recordStop = update(look =>
  stopNow(look, look.event.type === 'stop' ? (look.event.cause ?? null) : null),
);

/** The cause, and the emergencies that were called out besides it: both are asked about. */
const allCauses = (stop: StopRecord | null): PromptValue => {
  const cause = stop?.cause ?? 'other';
  const besides = (stop?.also ?? []).filter(also => isEmergency(also) && also !== cause);
  return besides.length === 0 ? { cause } : { list: [cause, ...besides].map(each => ({ cause: each })) };
};

const bySpeech = replyNeedsReadBack('gate');

/** Everything has been confirmed to be off before this is asked. */
const madeSafe = (node: Node): Node => ({ ...node, tags: ['madeSafe'] });

/** What was heard is confirmed first; by keys it leads on at once. Only the end of a session is confirmed either way. */
const sure = (reply: ReplyId, readBack: string, moves: readonly Move[]) => [
  { reply, move: { guard: bySpeech, target: readBack, actions: setAside(reply) } },
  ...moves.map(move => ({ reply, move })),
];

/** Stops closer to one another are one; common practice, no published source. */
const SAME_STOP_MS = 800;

const deviceOf = (event: Look['event']) => (event.type === 'stop' ? event.device : undefined);

/**
 * Everything off, then the cause, then back through what the cause puts in doubt. There is no way out
 * of here but through confirmed replies.
 */
export function stoppedNode(steps: readonly Step[]): Node {
  const technician: Waiting = { by: 'technician', critical: false };
  const caller: Waiting = { by: 'second', critical: false };
  const drills = steps.filter(step => step.kind === 'confirm' && step.drill);
  const drillAt = ({ context }: Look) => drills.find(({ id }) => id === (context.stop?.step ?? context.step));
  const cause = ({ context }: Look) => context.stop?.cause ?? null;
  /** More is known than that a word was tried out: what ran on, was found or called out, or that nobody was there. */
  const isMore = (stop: StopRecord | null) =>
    stop !== null && (stop.also.length > 0 || stop.found !== null || stop.longAway);
  /** Never one that names its cause, as the bus does, nor one within a stop that there is more to. */
  const isDrill = (look: Look) =>
    cause(look) === null &&
    !isMore(look.context.stop) &&
    drillAt(look) !== undefined &&
    !(look.event.type === 'stop' && (look.event.cause ?? null) !== null) &&
    (drillAt(look)?.by === 'second' || look.context.stop?.by === 'technician');
  /** The technician's word once more proves nothing of the second person's. */
  const isOthers = (look: Look) => drillAt(look)?.by !== look.context.stop?.by;
  /** The drill that follows at once: both words are tried out first, and confirmed together. */
  const nextDrill = (look: Look) => {
    const at = drillAt(look);
    const next = drills[at ? drills.indexOf(at) + 1 : drills.length];
    return next && !isDone(look.context, next.id) ? next : undefined;
  };
  const drilled = (look: Look) => {
    const heard = [...(look.context.stop?.drilled ?? []), drillAt(look)?.id];
    return drills.filter(({ id }) => heard.includes(id));
  };
  /**
   * A hand bounces and a held key repeats, also at a device that both of them use; one word is heard at two devices. Within a
   * moment only the hands of two people at two devices are two.
   */
  const isSameStop = ({ context: { stop }, event }: Look) => {
    const last = stop?.lastDrilled ?? null;
    if (stop === null || last === null || stop.atMs - last.atMs >= SAME_STOP_MS) return false;
    const byHand = isByHand(event.via) && last.via !== undefined && isByHand(last.via);
    return !(byHand && last.by !== stop.by && last.device !== deviceOf(event));
  };
  const drilledNow = ({ context: { stop }, event }: Look): StopRecord['lastDrilled'] =>
    stop && { by: stop.by, atMs: stop.atMs, via: event.via, device: deviceOf(event) };
  const drillHeard = update(look => ({
    stop: look.context.stop && { ...look.context.stop, lastDrilled: drilledNow(look) },
  }));
  const { callOut, whileMakingSafe } = urgentWords(steps);
  const after = (look: Look) => doneAfterStop(steps, look.context, cause(look) ?? 'other');
  const name = (named: Cause | null) =>
    update(({ context: { stop, reopened } }) => ({
      stop: stop && {
        ...stop,
        cause: named,
        also: named === 'falseAlarm' ? stop.also : knownBesides(stop, reopened !== null),
      },
    }));
  const tellLate = remark(({ context: { stop, step } }) => ({
    line: 'answerLate',
    values: { title: { step: stop?.step ?? step }, time: { unit: 's', si: stop?.lateAfterS ?? 0 } },
  }));
  const toMakingSafe = [
    ...refusedWhileRunning.map(move => ({ reply: 'allOff' as const, move })),
    ...sure('allOff', 'makingSafeReadBack', [
      { guard: look => cause(look) !== null, target: 'causeReadBack' },
      { target: 'askingCause' },
    ]),
  ];
  const toEnd = {
    reply: 'endSession' as const,
    move: { target: 'endReadBack', actions: setAside('endSession') },
  };

  return {
    id: 'stopped',
    initial: 'calling',
    entry: note(({ context }) => ({
      kind: 'stopped',
      data: {
        step: context.stop?.step ?? context.step,
        cause: context.stop?.cause ?? null,
        by: context.stop?.by ?? null,
      },
    })),
    states: withHelp({
      calling: {
        always: [
          {
            guard: look => isDrill(look) && (isSameStop(look) || isOthers(look)),
            target: 'drillGoesOn',
            actions: drillHeard,
          },
          {
            guard: look => isDrill(look) && nextDrill(look) !== undefined,
            target: 'drillGoesOn',
            actions: update(look => ({
              step: nextDrill(look)?.id ?? look.context.step,
              stop: look.context.stop && {
                ...look.context.stop,
                step: nextDrill(look)?.id ?? look.context.step,
                drilled: drilled(look).map(({ id }) => id),
                lastDrilled: drilledNow(look),
              },
            })),
          },
          { guard: isDrill, target: 'drill' },
          // Ahead of an answer that is late: who is silent may lie there.
          ...emergencies.map(known => ({
            guard: (look: Look) => cause(look) === known,
            target: 'makingSafe',
            actions: [callOut, ...callForHelp(known)],
          })),
          {
            // Told once, not with each stop within it.
            guard: ({ context: { stop } }) =>
              stop?.firstMs === stop?.atMs && (stop?.lateAfterS ?? null) !== null,
            target: 'makingSafe',
            actions: [callOut, tellLate],
          },
          { target: 'makingSafe', actions: callOut },
        ],
      },
      // The next word is a stop like any other, and comes in here by the root.
      drillGoesOn: withMeta(
        askReply(
          { by: 'second', critical: false },
          () => ({ line: 'askNextDrill', values: emergencyWords }),
          toMakingSafe,
        ),
        { awaits: 'drill' },
      ),
      drill: askReply(technician, () => ({ line: 'askDrill', values: {} }), [
        {
          reply: 'thatWasTheDrill',
          move: {
            target: NEXT,
            actions: [
              remark(() => ({ line: 'drillDone', values: {} })),
              ...drills.map(drill =>
                note(look => (drilled(look).includes(drill) ? passed(drill, look) : null)),
              ),
              update(look => ({
                done: [...look.context.done, ...drilled(look).map(({ id }) => id)],
                stop: null,
                misheard: 0,
              })),
            ],
          },
        },
        ...toMakingSafe,
      ]),
      makingSafe: whileMakingSafe(notOffYet(askReply(technician, allOff, toMakingSafe)), allOff),
      makingSafeReadBack: whileMakingSafe(
        readBack(
          technician,
          readBackReply,
          [
            // Confirmed is what is so now, not what was so when it was said.
            ...refusedWhileRunning.map(move => ({ ...move, target: 'makingSafe' })),
            { guard: look => cause(look) !== null, target: 'causeReadBack' },
            { target: 'askingCause' },
          ],
          { target: 'makingSafe' },
        ),
        readBackReply,
      ),
      askingCause: madeSafe(
        askReply(technician, () => ({ line: 'askCause', values: {} }), [
          {
            reply: 'causeFalseAlarm',
            move: {
              guard: look => look.context.stop?.secondCalled === true && !bySecondPerson(look),
              target: 'askingCaller',
            },
          },
          ...causeReplies.flatMap(([reply, named]) => {
            const known = [name(named), ...callForHelp(named)];
            // What ends the start is confirmed by keys as well.
            const confirmed = (look: Look) => endsTheStart(named) || isBarred(look) || bySpeech(look);
            return [
              { reply, move: { guard: confirmed, target: 'causeReadBack', actions: known } },
              { reply, move: { target: 'reopened', actions: [...known, ...reopen(after, cause)] } },
            ];
          }),
          toEnd,
        ]),
      ),
      // Whoever shouted has seen something: nobody else takes it back.
      askingCaller: madeSafe(
        askReply(caller, () => ({ line: 'askCaller', values: {} }), [
          {
            reply: 'causeFalseAlarm',
            move: {
              guard: look => bySecondPerson(look) && (bySpeech(look) || isBarred(look)),
              target: 'callerReadBack',
              actions: name('falseAlarm'),
            },
          },
          {
            reply: 'causeFalseAlarm',
            move: {
              guard: bySecondPerson,
              target: 'reopened',
              actions: [name('falseAlarm'), ...reopen(after, cause)],
            },
          },
          {
            reply: 'causeFalseAlarm',
            move: { actions: remark(() => ({ line: 'onlyCaller', values: {} })) },
          },
          { reply: 'no', move: { target: 'askingCause' } },
        ]),
      ),
      callerReadBack: madeSafe(
        readBack(
          caller,
          () => ({ line: 'causeReadBack', values: { cause: { cause: 'falseAlarm' } } }),
          [
            { guard: look => bySecondPerson(look) && isBarred(look), target: '#ended', actions: bar },
            { guard: bySecondPerson, target: 'reopened', actions: reopen(after, cause) },
          ],
          { target: 'askingCause' },
        ),
      ),
      causeReadBack: madeSafe(
        readBack(
          technician,
          look => ({ line: 'causeReadBack', values: { cause: allCauses(look.context.stop) } }),
          [
            { guard: isBarred, target: '#ended', actions: bar },
            { target: 'reopened', actions: reopen(after, cause) },
          ],
          { target: 'askingCause', actions: name(null) },
        ),
      ),
      reopened: madeSafe(
        askReply(
          technician,
          ({ context }) => ({
            line: 'afterStop',
            values: { todo: toDo(context.reopened ?? []) },
          }),
          [...sure('ready', 'readyReadBack', onwards), toEnd],
        ),
      ),
      readyReadBack: madeSafe(readBack(technician, readBackReply, onwards, { target: 'reopened' })),
      ...confirmedOver(),
      endReadBack: madeSafe(
        readBack(technician, readBackReply, [{ target: '#ended' }], { target: 'askingCause' }),
      ),
    }),
  };
}

/**
 * Fire and injury that the second person called are not undone by another cause: only they take them back. What was
 * confirmed, and has put back its steps, nobody takes back.
 */
const knownBesides = ({ cause, also, secondCalled }: StopRecord, isConfirmed: boolean): StopRecord['also'] =>
  (secondCalled || isConfirmed) && isEmergency(cause) ? [...new Set([...also, cause])] : also;

/** A spun shell often still turns free: nothing that this list could ask for tells whether it may fire again. */
const endsTheStart = (cause: Cause) => cause === 'knocking';

/** What was found ends this start: the engine is not fired again in this session. */
export const isBarred = ({ context: { stop } }: Look): boolean =>
  [stop?.cause ?? null, ...(stop?.also ?? [])].some(known => known !== null && endsTheStart(known));

const bar = [
  remark(() => ({ line: 'knockingEnds', values: {}, priority: 'hazard' })),
  note(({ context }) => ({
    kind: 'barred',
    data: { step: context.stop?.step ?? context.step, why: 'knockingEnds' },
  })),
];

/** What has to be said first once the cause is known. */
const warnings: Partial<Record<Cause, LineId>> = {
  // Both lead back to filling in coolant, and the engine may have run hot.
  coolantLeak: 'hotCap',
  overheating: 'hotCap',
  coolantInCylinder: 'hydraulicLock',
  // It is reached for exactly then.
  noStart: 'noStartingFluid',
  // Ten minutes: common practice, no published source.
  fuelLeak: 'railHolds',
};

/** The first of them and how many, for the ear; the list is for the eye. */
const toDo = (steps: readonly StepId[]): PromptValue => {
  const [first] = steps;
  if (first === undefined) return { list: [] };
  if (steps.length === 1) return { step: first };
  return {
    line: 'toDoMany',
    values: { count: steps.length, first: { step: first }, steps: { list: steps.map(step => ({ step })) } },
  };
};

const reopen = (
  after: (look: Look) => ReturnType<typeof doneAfterStop>,
  cause: (look: Look) => Cause | null,
) => [
  remark(look => {
    const known = cause(look) ?? 'other';
    const warning = warnings[known] ?? (putsHandsIn(known) ? 'handsIn' : null);
    return warning
      ? { line: warning, values: { out: keptOff(look.context.profile, 'hands') }, priority: 'hazard' }
      : { line: 'causeKept', values: {} };
  }),
  note(look => ({
    kind: 'reopened',
    data: { cause: cause(look), steps: reopenedSteps(look.context.done, after(look)) },
  })),
  update(look => ({
    // A stop within a stop adds to what the first one put back on the list.
    reopened: [...(look.context.reopened ?? []), ...reopenedSteps(look.context.done, after(look))],
    done: after(look),
    again: [...new Set([...look.context.again, ...reopenedSteps(look.context.done, after(look))])],
    takenAway: stillTakenAway(after(look), onceAllIsOff(look.context)),
    skips: look.context.skips.filter(skip => after(look).includes(skip.step)),
    openItems: look.context.openItems.filter(item => after(look).includes(item.step)),
    misheard: 0,
  })),
];
