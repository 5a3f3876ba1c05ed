import type { Profile } from '../src/profile/schema.ts';
import { buildStep, phaseOf, stepKey, stepTarget } from './build-step.ts';
import { CompositionError, stepFaults, stuckStates } from './composition.ts';
import type { Context } from './context.ts';
import { emergencyWords } from './help.ts';
import { answered, awaitedFrom, silenceEndsMs, silenceMoves } from './kinds/unanswered.ts';
import { jobSteps } from './phases/00-job.ts';
import { fillSteps } from './phases/01-fill.ts';
import { primeSteps } from './phases/02-prime.ts';
import { walkRoundSteps } from './phases/03-walk-round.ts';
import { barOverSteps } from './phases/03b-bar-over.ts';
import { noFuelCrankSteps } from './phases/04-no-fuel-crank.ts';
import { keyOnSteps } from './phases/05-key-on.ts';
import { firstFireSteps } from './phases/06-first-fire.ts';
import { firstRunSteps } from './phases/06b-first-run.ts';
import { checksSteps } from './phases/07-running-checks.ts';
import { warmUpSteps } from './phases/08-warm-up.ts';
import { sweepsSteps } from './phases/09-sweeps.ts';
import { shutdownSteps } from './phases/10-shutdown.ts';
import { signOffSteps } from './phases/11-sign-off.ts';
import { freshQuestion, gateMet, isDone, stopFor } from './progress.ts';
import type { Step } from './steps.ts';
import { isBarred, recordStop, stoppedNode } from './stopped.ts';
import { leftMs, shiftTimes, timerStops } from './timing.ts';
import {
  atMs,
  kit,
  type Look,
  type Node,
  type Nodes,
  remark,
  type SessionInput,
  speak,
  update,
} from './toolkit.ts';
import type { Gate, PromptValue } from './vocabulary.ts';

/** The whole procedure for one engine, in its order. */
export const procedureFor = (profile: Profile): readonly Step[] => [
  ...jobSteps(profile),
  ...fillSteps(profile),
  ...primeSteps(profile),
  ...walkRoundSteps(profile),
  ...barOverSteps(profile),
  ...noFuelCrankSteps(profile),
  ...keyOnSteps(profile),
  ...firstFireSteps(profile),
  ...firstRunSteps(profile),
  ...checksSteps(profile),
  ...warmUpSteps(profile),
  ...sweepsSteps(profile),
  ...shutdownSteps(profile),
  ...signOffSteps(profile),
];

/** The step to be done now: the first that applies and is not done. Null when the procedure is through. */
export const firstUndone = (steps: readonly Step[], context: Context): Step | null =>
  steps.find(step => (step.when?.(context) ?? true) && !isDone(context, step.id)) ?? null;

/** Gates that are not met yet, of those that the steps of this procedure hold. */
export const unmetGates = (steps: readonly Step[], context: Context): Gate[] =>
  [...new Set(steps.flatMap(step => (step.gate ? [step.gate] : [])))].filter(
    gate => !gateMet(steps, context, gate),
  );

function phaseNodes(steps: readonly Step[]): Nodes {
  const phases = [...new Set(steps.map(step => phaseOf(step.id)))];
  return Object.fromEntries(
    phases.map(phase => {
      const own = steps.filter(step => phaseOf(step.id) === phase);
      const first = own[0];
      const node: Node = {
        initial: first ? stepKey(first.id) : '',
        states: Object.fromEntries(own.map(step => [stepKey(step.id), buildStep(step, steps)])),
      };
      return [phase, node];
    }),
  );
}

/** Looks for the step to be done now once for each context, not once for each step. */
function undoneFinder(steps: readonly Step[]) {
  const found = new WeakMap<Context, Step | null>();
  return (context: Context): Step | null => {
    const known = found.get(context);
    if (known !== undefined) return known;
    const step = firstUndone(steps, context);
    found.set(context, step);
    return step;
  };
}

/** To this step if it is the one to be done now; a new phase is announced on the way. */
function toStep(step: Step, undone: (context: Context) => Step | null) {
  const isNext = ({ context }: { readonly context: Context }) => undone(context) === step;
  const phase = phaseOf(step.id);
  return [
    {
      guard: (look: Look) =>
        isNext(look) && (look.context.done.length === 0 || phaseOf(look.context.step) !== phase),
      target: stepTarget(step.id),
      actions: remark(() => ({ line: 'phaseStarts', values: { phase: { phase } } })),
    },
    { guard: isNext, target: stepTarget(step.id) },
  ];
}

/** What a session knows that has only just begun, with its first step. */
export const initialContext = ({ input }: { readonly input: SessionInput }, first: Step): Context => ({
  profile: input.profile,
  job: input.job,
  step: first.id,
  done: [],
  readings: [],
  series: [],
  pending: null,
  questioned: null,
  doubted: null,
  misheard: 0,
  timer: null,
  heldSinceMs: null,
  deadline: null,
  unanswered: null,
  watchesBegan: {},
  nextLookMs: null,
  bursts: [],
  burstsBefore: 0,
  clearAtMs: null,
  faults: [],
  earlierFaults: [],
  spokenSpn: null,
  skips: [],
  openItems: [],
  echoed: [],
  oneByOne: null,
  spokenInList: false,
  stop: null,
  stops: 0,
  absences: [],
  runsSinceMs: null,
  without: [],
  takenAway: [],
  again: [],
  reopened: null,
  lastSaid: null,
});

/** While held, time stands still for what is timed; the second person's "clear" grows old all the same. */
const goOn = update(({ context, event }) => ({
  heldSinceMs: null,
  unanswered: null,
  ...(context.heldSinceMs === null ? {} : shiftTimes(context, atMs(event) - context.heldSinceMs)),
}));

/**
 * Work stands still. Beside a running engine only so long as people may be silent there: then everything is off. Its
 * timers and looks go on meanwhile.
 */
function heldNode(steps: readonly Step[]): Node {
  const isRunning = ({ context }: Look) => steps.find(({ id }) => id === context.step)?.engine === 'running';
  const leftS = ({ context, event }: Look) => Math.ceil(((silenceEndsMs(context) ?? 0) - atMs(event)) / 1000);
  const left = (look: Look): PromptValue => ({ unit: 's', si: leftS(look) });
  return {
    id: 'held',
    meta: { replies: [], by: 'technician' },
    entry: [
      update(look => ({
        heldSinceMs: atMs(look.event),
        unanswered: isRunning(look) ? awaitedFrom(look, 'glance') : null,
      })),
      remark(look =>
        look.context.unanswered
          ? { line: 'onHoldRunning', values: { time: left(look) }, priority: 'hazard' }
          : { line: 'onHold', values: {} },
      ),
    ],
    on: {
      clock: [
        timerStops,
        ...silenceMoves('glance', look => ({
          line: 'holdRunsOut',
          values: { time: left(look) },
          priority: 'hazard',
        })),
      ],
      continue: {
        target: '#procedure.memory',
        actions: [remark(() => ({ line: 'goesOn', values: {} })), goOn],
      },
    },
  };
}

/** Without these nobody signs a start off. */
const AT_THE_END: readonly Gate[] = ['signature'];

/** A machine holds no state of its own, and its composition takes a while to be checked. */
const built = new WeakMap<Profile, FirstStart>();

/**
 * The start-up machine for one engine profile; the same one for the same profile.
 * @throws CompositionError where its steps do not make a procedure
 */
export function buildFirstStart(profile: Profile): FirstStart {
  const machine = built.get(profile) ?? checkedMachine(procedureFor(profile));
  built.set(profile, machine);
  return machine;
}

/**
 * The machine for these steps.
 * @throws CompositionError where they do not make a procedure
 */
export function checkedMachine(steps: readonly Step[]) {
  const faults = stepFaults(steps, AT_THE_END);
  const first = steps[0];
  if (!first || faults.length > 0) throw new CompositionError(faults);
  const machine = machineOf(steps, first);
  const stuck = stuckStates(machine.root);
  if (stuck.length > 0) throw new CompositionError(stuck);
  return machine;
}

function machineOf(steps: readonly Step[], first: Step) {
  const undone = undoneFinder(steps);
  const titleOf = (context: Context) => ({ step: context.step });

  return kit.createMachine({
    id: 'firstStart',
    context: options => initialContext(options, first),
    initial: 'procedure',
    on: {
      // No state below may handle `stop`: it is the root's alone, so that nothing can shadow it.
      stop: { target: '#stopped', actions: recordStop, reenter: true },
      sayAgain: {
        actions: [
          answered,
          {
            type: 'say',
            params: ({ context }) =>
              context.lastSaid ?? {
                line: 'helpAlways',
                step: context.step,
                values: emergencyWords,
                priority: 'prompt',
              },
          },
        ],
      },
      status: {
        actions: [
          answered,
          remark(({ context }) => {
            // The signature is one of them until all is over.
            const gates = { list: unmetGates(steps, context).map(gate => ({ gate })) };
            return {
              line: 'status',
              values: {
                phase: { phase: phaseOf(context.step) },
                title: titleOf(context),
                open: { line: 'statusOpen', values: { gates } },
              },
            };
          }),
        ],
      },
      timeLeft: {
        actions: [
          answered,
          remark(({ context, event }) => {
            const left = leftMs(context, atMs(event));
            return left === null
              ? { line: 'noTimer', values: {} }
              : { line: 'timeLeft', values: { time: { unit: 's', si: left / 1000 } } };
          }),
        ],
      },
      help: { actions: [answered, remark(() => ({ line: 'helpAlways', values: emergencyWords }))] },
    },
    states: {
      procedure: {
        id: 'procedure',
        initial: 'next',
        on: {
          hold: { target: '#held' },
        },
        states: {
          ...phaseNodes(steps),
          next: {
            always: [
              ...steps.flatMap(step => toStep(step, undone)),
              {
                guard: ({ context }) => AT_THE_END.every(gate => gateMet(steps, context, gate)),
                target: '#signedOff',
              },
              stopFor('other'),
            ],
          },
          memory: { type: 'history', history: 'deep' },
        },
      },
      held: heldNode(steps),
      stopped: stoppedNode(steps),
      signedOff: {
        id: 'signedOff',
        type: 'final',
        entry: [update(() => freshQuestion), ...speak(() => ({ line: 'signedOff', values: {} }))],
      },
      ended: {
        id: 'ended',
        type: 'final',
        entry: [...speak(look => ({ line: isBarred(look) ? 'endedBarred' : 'ended', values: {} }))],
      },
    },
  });
}

export type FirstStart = ReturnType<typeof machineOf>;
