import type { PhaseId, StepId } from '../prompts/types.ts';
import type { Context } from './context.ts';
import { GIVEN_BACK } from './safeguards.ts';
import type { Step } from './steps.ts';
import type { Cause } from './vocabulary.ts';

/** A whole phase (`fill.`) or one step (`fill.coolantFilled`). */
type Reopened = `${PhaseId}.` | StepId;

const COOLANT: readonly Reopened[] = [
  'fill.jacketHeater',
  'fill.coolantCool',
  'fill.coolantFilled',
  'fill.coolantBled',
  'walkRound.hoses',
  'walkRound.rawWater',
  'walkRound.strainer',
];
const OIL: readonly Reopened[] = [
  'fill.oilFilterPreFilled',
  'fill.oilFilterDry',
  // How much went in at first says nothing any more: the dipstick does.
  'fill.oilLevel',
];
const FUEL: readonly Reopened[] = [
  'fill.firstFilterPreFilled',
  'fill.firstFilterDry',
  'fill.secondFilterPreFilled',
  'fill.secondFilterDry',
  'prime.',
];

/**
 * Whoever repairs has hands in the engine, and tools: they are counted, and the starter connected, before it turns again.
 * Common practice, no published source.
 */
const HANDS: readonly Reopened[] = ['walkRound.tools', 'barOver.toolOut'];
/** Oil to where a pump that lost its prime does not bring it. */
const OIL_FEEDS: readonly Reopened[] = ['barOver.isolated', 'barOver.prelube', 'barOver.turboFeed'];

const STOP_WORDS: readonly Reopened[] = ['job.stopTechnician', 'job.stopSecond'];
/** What hangs on the weather, and what may lie about the engine, when people come back to it. */
const COME_BACK: readonly Reopened[] = [
  // Its sample is taken under the cap.
  'fill.coolantCool',
  'fill.coolantFreezePoint',
  'fill.oilGrade',
  'fill.fuelGrade',
  'walkRound.tools',
  'walkRound.rawWater',
];

/**
 * A program that was away has both stop words proved again, and after a long time all that keeps people safe. What was
 * primed counts only for an engine that has not been shut down well: that one is not started any more.
 */
const doubtsOfRestart = (longAway: boolean, afterRun: boolean): readonly Reopened[] => [
  ...(longAway ? (['job.'] as const) : STOP_WORDS),
  ...(afterRun ? [] : (['noFuelCrank.'] as const)),
  ...(longAway && !afterRun ? COME_BACK : []),
];

/** What each cause puts in doubt, and so has to be done again. */
export const reopenedBy: Record<Cause, readonly Reopened[]> = {
  falseAlarm: [],
  drill: [],
  coolantLeak: [...COOLANT, ...HANDS],
  // A starter that turns an engine onto water bends a rod: it is turned by hand first, and its oil looked at.
  coolantInCylinder: [...COOLANT, 'fill.oilLevel', 'walkRound.tools', 'barOver.', 'noFuelCrank.'],
  oilLeak: [...OIL, ...HANDS, 'noFuelCrank.'],
  fuelLeak: [...FUEL, ...HANDS],
  // Lost prime is its usual cause.
  noOilPressure: [...OIL, 'walkRound.sensors', ...OIL_FEEDS, ...HANDS, 'noFuelCrank.'],
  noStart: ['fill.fuelGrade', ...FUEL, 'walkRound.sensors', ...HANDS],
  // What should not have fuelled it did, or its inlet held what burns.
  firedUnfuelled: ['job.cutOff', ...HANDS, 'noFuelCrank.'],
  // Whatever started it may start it once more while hands are in it.
  runsUnasked: ['job.cutOff', 'job.autoStart', ...HANDS, 'noFuelCrank.'],
  binds: ['walkRound.tools', 'barOver.'],
  overspeed: ['job.cutOff', 'walkRound.', 'barOver.', 'noFuelCrank.'],
  overheating: [...COOLANT, 'walkRound.belts', ...HANDS],
  faultCode: ['walkRound.sensors', 'walkRound.wiring', ...HANDS],
  smokeOrFire: ['job.', 'fill.', 'prime.', 'walkRound.', 'barOver.', 'noFuelCrank.'],
  someoneHurt: ['job.', 'walkRound.', 'noFuelCrank.'],
  looseOrNoise: ['walkRound.', 'barOver.', 'noFuelCrank.'],
  // It ends the start; where it is denied as misheard, what knocked is looked for all the same.
  knocking: ['walkRound.', 'barOver.', 'noFuelCrank.'],
  // `doubtsOfRestart` says what comes of it: before key-off and later, after a short absence and a long one.
  toolRestarted: [],
  other: ['walkRound.', 'barOver.toolOut', 'noFuelCrank.'],
};

/** All is off, and with that the mode switch of a set no longer where it was put. */
const SWITCHED_OFF: readonly Reopened[] = ['noFuelCrank.manual'];

/** Whether somebody's hands go into the engine before it turns again. */
export const putsHandsIn = (cause: Cause) =>
  reopenedBy[cause].includes('barOver.toolOut') || reopenedBy[cause].includes('barOver.');

/** What has to be done anew as well where the check of a step finds that it is no longer so. */
export const redoneWith: Partial<Record<StepId, readonly StepId[]>> = {
  'fill.coolantFilled': ['fill.coolantBleed', 'fill.coolantBled', 'fill.coolantFreezePoint'],
  'fill.coolantMix': [
    'fill.coolantFilled',
    'fill.coolantBleed',
    'fill.coolantBled',
    'fill.coolantFreezePoint',
  ],
};

const matches = (id: StepId, reopened: readonly Reopened[]) =>
  reopened.some(entry => (entry.endsWith('.') ? id.startsWith(entry) : id === entry));

const phaseOf = (id: StepId) => id.slice(0, id.indexOf('.') + 1);

/**
 * The steps that still count as done after a stop. The cause takes out what it puts in doubt, and
 * what was found by measurement does so whatever cause is named; a stop
 * in the middle of cranking without fuel begins that phase again; and nothing that was found with the
 * key on or the engine running outlives the stop, unless the engine had already been shut down well
 * and the cause puts nothing before it in doubt. A restart of the program counts in addition to whatever cause is open.
 */
export function doneAfterStop(steps: readonly Step[], context: Context, cause: Cause): readonly StepId[] {
  const order = (id: StepId) => steps.findIndex(step => step.id === id);
  const keyOn = steps.findIndex(step => step.id.startsWith('keyOn.'));
  const keyOff = order('shutdown.keyOff');
  const place = context.stop?.step ?? context.step;

  const found = context.stop?.found ?? null;
  const causes = [cause, ...(found ? [found] : []), ...(context.stop?.also ?? [])];
  const doubtful = causes.flatMap(each => reopenedBy[each]);
  const kept = context.done.filter(id => !matches(id, doubtful));
  const doubtBeforeKeyOn = kept.length < context.done.length;
  const afterRun = order(place) > keyOff && !doubtBeforeKeyOn;
  const cranking = phaseOf(place) === 'noFuelCrank.';
  const anew = causes.includes('toolRestarted')
    ? doubtsOfRestart(context.stop?.longAway ?? true, afterRun)
    : [];
  const lost = afterRun
    ? []
    : [...SWITCHED_OFF, ...(context.takenAway.includes('signOff.handBack') ? GIVEN_BACK : [])];
  const after = kept
    .filter(id => !matches(id, [...anew, ...lost]))
    .filter(id => (afterRun || order(id) < keyOn) && !(cranking && phaseOf(id) === 'noFuelCrank.'));
  // Locked out once more, it is given back once more: nobody signs for a set that does not start by itself.
  const lockedOutAnew = GIVEN_BACK.some(id => context.done.includes(id) && !after.includes(id));
  return lockedOutAnew ? after.filter(id => id !== 'signOff.handBack') : after;
}

/** The steps that a stop has put back on the list, in their order. */
export const reopenedSteps = (before: readonly StepId[], after: readonly StepId[]): StepId[] =>
  before.filter(id => !after.includes(id));
