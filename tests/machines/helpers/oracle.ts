import { stateName } from '../../../machines/moment.ts';
import type { PromptValue } from '../../../machines/vocabulary.ts';
import type { Profile } from '../../../src/profile/schema.ts';
import type { Happened } from './driver.ts';

/**
 * A second opinion on what may happen when, kept from the machine's own bookkeeping: it looks only at the
 * events, at the names of the states and at the notes for the record, and the steps are listed here by hand.
 */

const beforeAnyCranking = [
  'job.protection',
  'job.hazards',
  'job.ventilation',
  'job.extinguisher',
  'job.cutOff',
  'job.stopTechnician',
  'job.stopSecond',
  'job.figures',
  'fill.coolantMix',
  'fill.coolantFilled',
  'fill.coolantBled',
  'fill.oilGrade',
  'fill.oilQuantity',
  'fill.oilLevel',
  'walkRound.sensors',
  'walkRound.hoses',
  'walkRound.boots',
  'walkRound.belts',
  'walkRound.tools',
  'walkRound.wiring',
  'walkRound.fasteners',
  'barOver.isolated',
  'barOver.turned',
  'barOver.toolOut',
  'noFuelCrank.disabled',
  'noFuelCrank.proved',
  'noFuelCrank.batteryLoad',
];

const beforeFirstFire = [
  'fill.fuelGrade',
  'prime.noWeeps',
  'noFuelCrank.untilPressure',
  'noFuelCrank.holds',
  'noFuelCrank.voltage',
  'noFuelCrank.oilLevel',
  'noFuelCrank.restored',
  'keyOn.lamps',
  'keyOn.faults',
];

const secured: Readonly<Record<Profile['use']['kind'], readonly string[]>> = {
  vehicle: ['job.parked'],
  generator: ['job.autoStart', 'job.breaker'],
  marine: ['job.gearLever'],
  stationary: ['job.coupling'],
};

const filterStep = (place: 'first' | 'second', fit: 'preFilled' | 'dry') =>
  `fill.${place}Filter${fit === 'dry' ? 'Dry' : 'PreFilled'}`;

/** The steps without which the starter may not turn the engine, or fuel may not burn. */
function neededFor(step: string, profile: Profile): string[] {
  const oilFilter = profile.oil.filter === 'dry' ? 'fill.oilFilterDry' : 'fill.oilFilterPreFilled';
  const any = [
    ...beforeAnyCranking,
    oilFilter,
    ...secured[profile.use.kind],
    ...(profile.exhaust.kind === 'wet' ? ['walkRound.rawWater', 'walkRound.strainer'] : []),
    ...(profile.prelube ? ['barOver.prelube'] : []),
    ...(profile.turbo ? ['barOver.turboFeed'] : []),
    ...(profile.jacketHeater ? ['fill.jacketHeater'] : []),
    ...(profile.use.kind === 'generator' && profile.use.modeSwitch !== null ? ['noFuelCrank.manual'] : []),
  ];
  if (step !== 'firstFire.crank' && step !== 'firstRun.restart') return any;
  return [
    ...any,
    ...beforeFirstFire,
    ...(profile.fuel.primer.kind === 'hand' ? ['prime.firm', 'prime.screwedHome'] : ['prime.electricBled']),
    ...(profile.exhaust.kind === 'wet' ? ['keyOn.rawWater'] : []),
    ...(profile.afterTreatment === 'none' ? [] : ['keyOn.regeneration']),
    ...(step === 'firstRun.restart'
      ? [
          'firstRun.oilLevel',
          'firstRun.look',
          ...(profile.exhaust.kind === 'wet' ? ['firstRun.rawWater'] : []),
        ]
      : []),
    ...profile.fuel.filters.map(({ id, fit }) => filterStep(id, fit)),
    // In the weather of these tests the heater has to work.
    ...(profile.heater ? ['keyOn.heaterHold', 'keyOn.heaterDone'] : []),
  ];
}

/** What is given back at the end, and so no longer locked out. */
const givenAway = ['job.autoStart', 'job.breaker', 'fill.jacketHeater'];

const handsBack = ({ handsBack: gives, use, jacketHeater, afterTreatment }: Profile) =>
  gives && (use.kind === 'generator' || jacketHeater !== null || afterTreatment !== 'none');

/** The phases in their order: what was found with the key on, or running, is lost when everything is off. */
const phases = [
  'job',
  'fill',
  'prime',
  'walkRound',
  'barOver',
  'noFuelCrank',
  'keyOn',
  'firstFire',
  'firstRun',
  'checks',
  'warmUp',
  'sweeps',
  'shutdown',
  'signOff',
];
const phaseOf = (step: string) => step.slice(0, step.indexOf('.'));
const fromKeyOn = (step: string) => phases.indexOf(phaseOf(step)) >= phases.indexOf('keyOn');

const runningPhases = ['checks', 'warmUp', 'sweeps'];
const runningSteps = [
  'firstFire.oilPressure',
  'firstFire.rawWater',
  'firstFire.eyes',
  'firstRun.run',
  'firstRun.runUnloaded',
  'firstRun.keyOff',
  'firstRun.oilPressure',
  'firstRun.rawWaterOpen',
  'firstFire.lamps',
  'firstFire.transient',
  'firstFire.warningLamp',
  'shutdown.settle',
  'shutdown.settleUnloaded',
  'shutdown.coolant',
  'shutdown.keyOff',
];

/** Whether the engine runs in a state, going by its name alone. */
export const isRunningState = (name: string) =>
  runningPhases.includes(phaseOf(name)) || runningSteps.some(step => name.startsWith(`${step}.`));

export const isCrankingState = (name: string) => name.endsWith('.cranking');

/** What one event opens, closes and uses up. */
export interface Effect {
  /** Facts that hold from now on: step ids, `clear`, `fired`. */
  readonly opens: readonly string[];
  /** True for a fact that no longer holds. */
  readonly closes: (fact: string) => boolean;
  /** Facts without which this event may not have led where it did. */
  readonly needs: readonly string[];
}

const orderOf = (steps: readonly string[], step: string) => steps.indexOf(step);

/** Reads one event's effect off its notes and the names of the states before and after it. */
export function effectOf(
  { event, before, after, notes, said }: Happened,
  steps: readonly string[],
  profile: Profile,
): Effect {
  const from = stateName(before);
  const to = stateName(after);
  const step = after.context.step;
  const opens: string[] = [];
  const needs: string[] = [];
  const closed = new Set<string>();
  const tests: ((fact: string) => boolean)[] = [fact => closed.has(fact)];

  for (const { kind, data } of notes) {
    if (kind === 'passed' && typeof data.step === 'string') opens.push(data.step);
    if (kind === 'reopened' && Array.isArray(data.steps)) for (const id of data.steps) closed.add(String(id));
  }
  if (event.type === 'goBack' && from !== to && !to.startsWith('stopped')) {
    // Safeguards that are asked for anew stand far before what was undone: what is between them stays.
    const anew = said.flatMap(({ line, values }) => (line === 'safeAgainFirst' ? stepsIn(values.steps) : []));
    for (const id of anew) closed.add(id);
    const undone = anew.length > 0 ? before.context.step : step;
    tests.push(fact => orderOf(steps, fact) >= orderOf(steps, undone));
  }
  if (to.startsWith('stopped') && (event.type === 'stop' || !from.startsWith('stopped'))) {
    // Everything is off: the mode switch of a set as well.
    closed.add('clear').add('fired').add('noFuelCrank.manual');
    // After key-off the engine stood already: only a cause can put in doubt what was found before.
    if (!opensAfterKeyOff(from, before.context.stop?.step ?? before.context.step, steps))
      tests.push(fromKeyOn);
  }
  if (from.endsWith('.clearReadBack') && event.type === 'reply' && event.id === 'yes') opens.push('clear');
  // A clear that nobody acted on grows old, and a burst uses it up.
  if (from.endsWith('.ready') && event.type !== 'hold' && to !== from) closed.add('clear');
  if (isCrankingState(to) && from !== to) {
    needs.push(...neededFor(step, profile), 'clear');
    // The starter turns the engine afresh: whether it fires has to be said anew.
    closed.add('fired');
  }
  const starts = from.startsWith('firstFire.crank.') || from.startsWith('firstRun.restart.');
  if (starts && event.type === 'reply' && event.id === 'fired') opens.push('fired');
  if (opens.includes('shutdown.keyOff') || opens.includes('firstRun.keyOff')) closed.add('fired');
  if (opens.includes('signOff.handBack')) for (const step of givenAway) closed.add(step);
  if (to === 'signedOff' && handsBack(profile)) needs.push('signOff.handBack');
  if (isRunningState(to) && !opens.includes('fired')) needs.push('fired');
  return { opens, needs, closes: fact => tests.some(test => test(fact)) };
}

/** The steps that a sentence names in a list. */
const stepsIn = (value: PromptValue | undefined): string[] =>
  typeof value === 'object' && 'list' in value
    ? value.list.flatMap(each => (typeof each === 'object' && 'step' in each ? [each.step] : []))
    : [];

const opensAfterKeyOff = (from: string, step: string, steps: readonly string[]) =>
  orderOf(steps, step) > orderOf(steps, 'shutdown.keyOff') && !isRunningState(from);

/** What holds after an event, of what held before it. What an event opens, it opens after what it closes. */
export const holdsAfter = (held: ReadonlySet<string>, { opens, closes }: Effect): Set<string> =>
  new Set([...[...held].filter(fact => !closes(fact)), ...opens]);

/** The needs that were not met when the event came. */
export const unmetNeeds = (held: ReadonlySet<string>, { needs }: Effect): string[] =>
  needs.filter(need => !held.has(need));
