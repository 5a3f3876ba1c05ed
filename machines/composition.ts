import { skippableSteps } from '../src/profile/schema.ts';
import type { Step } from './steps.ts';
import type { Offer } from './toolkit.ts';
import type { Gate } from './vocabulary.ts';

/** Steps that do not make a procedure: `faults` holds one sentence for each thing that is wrong. */
export class CompositionError extends Error {
  override readonly name = 'CompositionError';
  readonly faults: readonly string[];
  constructor(faults: readonly string[]) {
    super(`The steps do not make a procedure. ${faults.join(' ')}`);
    this.faults = faults;
  }
}

/** Whoever sets a gate, in the order of the procedure. */
const settersOf = (steps: readonly Step[], gate: Gate) => steps.filter(step => step.gate === gate);

function gateFaults(steps: readonly Step[], step: Step, gate: Gate): string[] {
  const setters = settersOf(steps, gate);
  const own = steps.indexOf(step);
  if (setters.length === 0)
    return [`${step.id} needs the gate ${gate}, which no step sets: give it to the step that does.`];
  const late = setters.filter(setter => steps.indexOf(setter) >= own);
  if (late.length > 0)
    return [
      `${step.id} needs the gate ${gate}, which ${late.map(({ id }) => id).join(', ')} sets only then or later.`,
    ];
  return setters.every(setter => setter.when)
    ? [`${step.id} needs the gate ${gate}, which nobody sets where ${setters[0]?.id} does not apply.`]
    : [];
}

/**
 * What is wrong with steps as a procedure, a sentence each.
 *
 * A step that turns the engine, or stands beside one that runs, says by gates what has to be true: the order of the
 * list alone protects nobody, because a stop, going back and a skip change what is done. For the same reason a gate
 * that no step needs is no gate, and a step that may be skipped sets none.
 * @param atTheEnd the gates without which a session is not signed off
 */
export function stepFaults(steps: readonly Step[], atTheEnd: readonly Gate[]): string[] {
  const needed = new Set([...atTheEnd, ...steps.flatMap(step => step.needs ?? [])]);
  const twice = steps.filter((step, index) => steps.findIndex(({ id }) => id === step.id) !== index);
  return [
    ...twice.map(({ id }) => `${id} is in the list twice.`),
    ...steps.flatMap(step => (step.needs ?? []).flatMap(gate => gateFaults(steps, step, gate))),
    ...atTheEnd
      .filter(gate => settersOf(steps, gate).length === 0)
      .map(gate => `The end needs the gate ${gate}, which no step sets.`),
    ...steps
      .filter(({ engine, needs = [] }) => engine !== 'off' && needs.length === 0)
      .map(
        ({ id, engine }) =>
          `${id} is done with the engine ${engine} and needs no gate: its place in the list is all that keeps it there.`,
      ),
    ...steps.flatMap(({ id, gate }) =>
      gate && !needed.has(gate) ? [`${id} sets the gate ${gate}, which nothing needs.`] : [],
    ),
    ...steps.flatMap(({ id, gate }) =>
      gate && skippableSteps.some(skippable => skippable === id)
        ? [`${id} sets the gate ${gate} and may be skipped: a skip would open it.`]
        : [],
    ),
    ...steps.flatMap(step =>
      step.kind === 'reading' && step.readBackIn && skippableSteps.some(skippable => skippable === step.id)
        ? [`${step.id} is read back in ${step.readBackIn} and may be skipped: nothing would be read back.`]
        : [],
    ),
  ];
}

/** Of a state of the built machine, what its ways out hang on. */
export interface StateOfMachine {
  readonly id: string;
  readonly states: Readonly<Record<string, StateOfMachine>>;
  readonly parent?: StateOfMachine | undefined;
  readonly meta?: Offer;
  readonly always?: readonly Way[];
  readonly transitions: ReadonlyMap<string, readonly Way[]>;
  /** Nowhere, where there is no state inside. */
  readonly initial: { readonly target: readonly StateOfMachine[] };
}

interface Way {
  readonly target: readonly StateOfMachine[] | undefined;
}

/** What leads away from any state, whatever it is for: to go on, a state needs a way of its own. */
const NO_WAY_ON: readonly string[] = ['stop', 'hold', 'goBack', 'skip'];

/** Where an event, or the state itself, leads from here: by its own ways and by those of the states around it. */
function leadsTo(state: StateOfMachine, top: StateOfMachine): StateOfMachine[] {
  const own = [
    ...(state.always ?? []),
    ...[...state.transitions].flatMap(([type, ways]) => (NO_WAY_ON.includes(type) ? [] : ways)),
  ].flatMap(({ target }) => target ?? []);
  const around = state === top || !state.parent ? [] : leadsTo(state.parent, top);
  return [...own, ...state.initial.target, ...around];
}

const within = (top: StateOfMachine): StateOfMachine[] =>
  Object.values(top.states).flatMap(state => [state, ...within(state)]);

/**
 * The states of one part of the machine (a step, the stop) from which no way leads on, a sentence each. A stop, a hold
 * and going back are no ways on, except that the drill of a stop word is passed by the stop itself.
 * @param ends the states, outside or inside this part, at which it is behind one
 */
export function waysOutFaults(top: StateOfMachine, ends: readonly StateOfMachine[]): string[] {
  const states = within(top);
  const leads = new Map(states.map(state => [state, leadsTo(state, top)]));
  const through = new Set(states.filter(state => state.meta?.awaits === 'drill'));
  const isThrough = (state: StateOfMachine) => ends.includes(state) || through.has(state);
  for (let before = -1; before !== through.size; ) {
    before = through.size;
    for (const [state, targets] of leads) if (targets.some(isThrough)) through.add(state);
  }
  return states
    .filter(state => !through.has(state))
    .map(({ id }) => `${id} has no way out but a stop: give it an answer or a time that leads on.`);
}

/** The states of the whole machine from which no way leads on, a sentence each: in its steps, and in the stop. */
export function stuckStates({ states }: StateOfMachine): string[] {
  const { procedure, stopped, signedOff, ended } = states;
  const { next, ...phases } = procedure?.states ?? {};
  const ends = [next, signedOff, ended].filter(end => end !== undefined);
  const steps = Object.values(phases).flatMap(phase => Object.values(phase.states));
  return [...steps, stopped].flatMap(part => (part ? waysOutFaults(part, ends) : []));
}
