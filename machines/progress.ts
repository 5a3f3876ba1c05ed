import type { StepId } from '../prompts/types.ts';
import type { Context, Deadline, StopRecord } from './context.ts';
import { emergencyIn, isEmergency } from './emergency.ts';
import { afterPassing } from './safeguards.ts';
import type { Step } from './steps.ts';
import { atMs, type Look, type Note, note, update } from './toolkit.ts';
import type { Cause } from './vocabulary.ts';

/** Where every finished step leads: to the first step, in the order of the procedure, that is not done. */
export const NEXT = '#procedure.next';
export const STOPPED = '#stopped';

/** Time for an answer to a read-back where silence would be dangerous. */
const READ_BACK_S = 8;

/** After this many misunderstandings a voice counts only when the second person speaks. */
export const TRUSTED_MISUNDERSTANDINGS = 3;

export const isDone = (context: Context, id: StepId) => context.done.includes(id);

/** A gate is met when every step of the procedure that names it, and applies here, is done. */
export const gateMet = (steps: readonly Step[], context: Context, gate: Step['gate']) => {
  const holders = steps.filter(step => step.gate === gate && (step.when?.(context) ?? true));
  return holders.length > 0 && holders.every(step => isDone(context, step.id));
};

/** What is forgotten when one question ends and the next begins. */
export const freshQuestion = {
  pending: null,
  questioned: null,
  doubted: null,
  misheard: 0,
  timer: null,
  deadline: null,
  unanswered: null,
  nextLookMs: null,
  clearAtMs: null,
} satisfies Partial<Context>;

/**
 * Who said so: with three misunderstandings the second person says it for the technician. Time and the bus say nothing
 * in their own name, and of a drill whoever confirms it is not who called.
 */
const passedBy = (step: Step, { by, via }: Look['event']) =>
  via === 'tool' || via === 'bus' || (step.kind === 'confirm' && step.drill) ? step.by : by;

/** For the record: a step is done, and the gate that it helps to open. */
export const passed = (step: Step | undefined, { context, event }: Look): Note => ({
  kind: 'passed',
  data: {
    step: step?.id ?? context.step,
    by: step === undefined ? null : passedBy(step, event),
    ...(step?.gate ? { gate: step.gate } : {}),
    misheard: context.misheard,
    // What was computed for the step belongs on the record as well.
    ...(step?.values ? { figures: step.values(context) } : {}),
  },
});

/** The step is done: on to the next. */
export const pass = (step: Step) => ({
  target: NEXT,
  actions: [
    note(look => passed(step, look)),
    update(({ context }) => ({
      ...freshQuestion,
      done: [...context.done, step.id],
      again: context.again.filter(id => id !== step.id),
      // What was told before the starter turned the engine is not taken back in passing any more.
      ...(step.engine === 'cranking' ? { echoed: [] } : {}),
      ...afterPassing(step.id, context),
    })),
  ],
});

/** What an engine is not started again after on somebody's word alone. */
const FOUND: readonly (Cause | null)[] = [
  'noOilPressure',
  'overheating',
  'overspeed',
  'firedUnfuelled',
  'runsUnasked',
  'coolantInCylinder',
  'knocking',
];

/** A stop that comes while a reading outside its limits waits to be denied was called for that reading. */
function foundBy({ pending }: Context, cause: Cause | null): Cause | null {
  const found = cause ?? (pending?.kind === 'value' ? (pending.stops ?? null) : null);
  return FOUND.includes(found) ? found : null;
}

/** A key is turned by then; common practice, no published source. */
export const KEY_TURNED_MS = 3000;

/** Away for longer, a bay is another: people, chocks and weather; own choice. */
export const LONG_AWAY_S = 1800;

/** An absence that no clock has measured counts as long. */
const wasLongAway = (event: Look['event']) =>
  event.type !== 'stop' || event.awayS === undefined || event.awayS >= LONG_AWAY_S;

const awayS = (event: Look['event']) => (event.type === 'stop' ? (event.awayS ?? null) : null);

const byPeople = ({ event: { via } }: Look) => via !== 'bus' && via !== 'tool';

/** The stop that is going on; one that was a false alarm is none any more, and another has a cause of its own. */
const standing = (stop: StopRecord | null) => (stop?.cause === 'falseAlarm' ? null : stop);

/**
 * Every stop forgets what was being asked and timed. A stop within a stop keeps the place and the cause
 * of the first one, unless it calls for help.
 */
export const stopNow = (
  { context, event }: Look,
  cause: Cause | null,
  lateAfterS: number | null = null,
): Partial<Context> => ({
  ...freshQuestion,
  heldSinceMs: null,
  watchesBegan: {},
  echoed: [],
  stops: context.stops + 1,
  ...(cause === 'toolRestarted'
    ? { absences: [...context.absences, { atMs: atMs(event), seconds: awayS(event) }] }
    : {}),
  stop: {
    cause: standing(context.stop) === null ? cause : (context.stop?.cause ?? null),
    also:
      context.stop && cause === 'toolRestarted' && context.stop.cause !== cause
        ? [...new Set([...context.stop.also, cause])]
        : (context.stop?.also ?? []),
    ...(context.stop && isEmergency(cause)
      ? emergencyIn({ cause: standing(context.stop)?.cause ?? null, also: context.stop.also }, cause)
      : {}),
    found: context.stop?.found ?? foundBy(context, cause),
    by: event.by,
    atMs: atMs(event),
    step: context.stop?.step ?? context.step,
    lateAfterS: context.stop ? context.stop.lateAfterS : lateAfterS,
    longAway: context.stop?.longAway === true || (cause === 'toolRestarted' && wasLongAway(event)),
    secondCalled:
      context.stop?.secondCalled === true || (event.by === 'second' && byPeople({ context, event })),
    firstMs: context.stop?.firstMs ?? atMs(event),
    insisted:
      context.stop !== null &&
      (context.stop.insisted ||
        // What it was for, told once everything stops, is no call for it once more.
        (byPeople({ context, event }) &&
          !isEmergency(cause) &&
          atMs(event) - context.stop.firstMs >= KEY_TURNED_MS)),
    drilled: context.stop?.drilled ?? [],
    lastDrilled: context.stop?.lastDrilled ?? null,
  },
});

/** Everything stops, with a cause that is already known, or one to be asked for. */
export const stopFor = (cause: Cause | null) => ({
  target: STOPPED,
  actions: [update(look => stopNow(look, cause))],
});

/** After three misunderstandings only keys, touch or the second person are believed. */
export const believed = ({ context, event }: Look) =>
  context.misheard < TRUSTED_MISUNDERSTANDINGS || event.via !== 'voice' || event.by === 'second';

export const deadlinePassed = ({ context, event }: Look) =>
  context.deadline !== null && atMs(event) >= context.deadline.atMs;

/** A read-back may run past the limit of the question it belongs to. */
export const extendDeadline = ({ context: { deadline }, event }: Look): Partial<Context> =>
  deadline === null || deadline.extended
    ? {}
    : {
        deadline: {
          ...deadline,
          atMs: Math.max(deadline.atMs, atMs(event) + READ_BACK_S * 1000),
          extended: true,
          questionMs: deadline.atMs,
        },
      };

/** When an answer to the question itself comes too late, whatever read-back is going on. */
const questionEndsMs = ({ atMs, questionMs }: Deadline) => questionMs ?? atMs;

/** What was denied was no answer: the time for one is what it was before. */
export const questionAgain = ({ context: { deadline } }: Look): Partial<Context> => {
  if (deadline?.questionMs === undefined) return {};
  const { questionMs, ...rest } = deadline;
  return { deadline: { ...rest, atMs: questionMs, extended: false } };
};

const lateStop = (cause: Cause, isLate: (look: Look) => boolean) => ({
  guard: (look: Look) => isLate(look) && look.context.deadline?.cause === cause,
  target: STOPPED,
  actions: [
    update(look => {
      const { deadline } = look.context;
      return stopNow(look, cause, deadline && (questionEndsMs(deadline) - deadline.sinceMs) / 1000);
    }),
  ],
});

/** Wherever a deadline may run: past it, the missing answer counts as no. */
export const lateStops = (causes: readonly Cause[]) => causes.map(cause => lateStop(cause, deadlinePassed));

/** Where an answer is denied after its question's time: there is none, and none can come any more. */
export const deniedLate = (cause: Cause) =>
  lateStop(
    cause,
    ({ context: { deadline }, event }) =>
      deadline?.questionMs !== undefined && atMs(event) >= deadline.questionMs,
  );
