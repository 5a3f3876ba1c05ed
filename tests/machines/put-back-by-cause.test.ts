import { describe, expect, it } from 'vitest';
import type { Context } from '../../machines/context.ts';
import { procedureFor } from '../../machines/first-start.ts';
import { doneAfterStop, putsHandsIn, redoneWith } from '../../machines/reopening.ts';
import type { Cause } from '../../machines/vocabulary.ts';
import type { StepId } from '../../prompts/types.ts';
import { demoBoat, demoFour, demoGenset, demoSix } from './helpers/profiles.ts';
import { stoppedAt } from './helpers/stopped-at.ts';
import { knowing } from './limits/known.ts';

/** Every step before the key is on that one engine or another has. */
const beforeKeyOn: readonly StepId[] = [
  ...new Set(
    [demoSix, demoFour, demoGenset, demoBoat]
      .flatMap(profile => procedureFor(profile).map(({ id }) => id))
      .filter(id => /^(job|fill|prime|walkRound|barOver|noFuelCrank)\./.test(id)),
  ),
  'job.coupling',
  'fill.secondFilterPreFilled',
];

const steps = procedureFor(demoSix);

/** What is put back of these steps, all of which were done. */
function putBack(done: readonly StepId[], step: StepId, cause: Cause, known: Partial<Context> = {}) {
  const after = doneAfterStop(steps, knowing(demoSix, {}, { done, step, ...known }), cause);
  return done.filter(id => !after.includes(id));
}

const hands = ['walkRound.tools', 'barOver.toolOut'];
const coolant = [
  ...['fill.jacketHeater', 'fill.coolantCool', 'fill.coolantFilled', 'fill.coolantBled'],
  ...['walkRound.hoses', 'walkRound.rawWater', 'walkRound.strainer'],
];
const oil = ['fill.oilFilterPreFilled', 'fill.oilFilterDry', 'fill.oilLevel'];
const fuel = [
  ...['fill.firstFilterPreFilled', 'fill.firstFilterDry'],
  ...['fill.secondFilterPreFilled', 'fill.secondFilterDry', 'prime.*'],
];
const turning = ['walkRound.*', 'barOver.*', 'noFuelCrank.*'];
/** All is off, and with that the mode switch of a set no longer where it was put. */
const always = ['noFuelCrank.manual'];

/** What each cause puts in doubt where the key was on; a star is for the whole phase. */
const doubt: Record<Cause, readonly string[]> = {
  falseAlarm: [],
  drill: [],
  coolantLeak: [...coolant, ...hands],
  coolantInCylinder: [...coolant, 'fill.oilLevel', 'walkRound.tools', 'barOver.*', 'noFuelCrank.*'],
  overheating: [...coolant, 'walkRound.belts', ...hands],
  oilLeak: [...oil, ...hands, 'noFuelCrank.*'],
  noOilPressure: [
    ...oil,
    'walkRound.sensors',
    ...['barOver.isolated', 'barOver.prelube', 'barOver.turboFeed'],
    ...hands,
    'noFuelCrank.*',
  ],
  fuelLeak: [...fuel, ...hands],
  noStart: ['fill.fuelGrade', ...fuel, 'walkRound.sensors', ...hands],
  firedUnfuelled: ['job.cutOff', ...hands, 'noFuelCrank.*'],
  runsUnasked: ['job.cutOff', 'job.autoStart', ...hands, 'noFuelCrank.*'],
  binds: ['walkRound.tools', 'barOver.*'],
  overspeed: ['job.cutOff', ...turning],
  faultCode: ['walkRound.sensors', 'walkRound.wiring', ...hands],
  smokeOrFire: ['job.*', 'fill.*', 'prime.*', ...turning],
  someoneHurt: ['job.*', 'walkRound.*', 'noFuelCrank.*'],
  looseOrNoise: turning,
  knocking: turning,
  other: ['walkRound.*', 'barOver.toolOut', 'noFuelCrank.*'],
  // Where nobody knows how long it was away.
  toolRestarted: [
    'job.*',
    'noFuelCrank.*',
    ...[
      'fill.coolantCool',
      'fill.coolantFreezePoint',
      'fill.oilGrade',
      'fill.fuelGrade',
      'walkRound.tools',
      'walkRound.rawWater',
    ],
  ],
};
const isIn = (id: string, named: readonly string[]) =>
  named.some(name => (name.endsWith('*') ? id.startsWith(name.slice(0, -1)) : id === name));
const causes = Object.entries(doubt) as [Cause, readonly string[]][];

describe('a stop with the key on', () => {
  it.each(causes)('for %s has put in doubt what hangs on it, and nothing else', (cause, named) => {
    expect(putBack(beforeKeyOn, 'keyOn.lamps', cause)).toEqual(
      beforeKeyOn.filter(id => isIn(id, [...named, ...always])),
    );
  });

  it('has put in doubt what counts besides its cause as well', () => {
    const stop = { ...stoppedAt('keyOn.lamps', null), also: ['binds', 'fuelLeak'] as const };
    expect(putBack(beforeKeyOn, 'keyOn.lamps', 'faultCode', { stop })).toEqual(
      beforeKeyOn.filter(id => isIn(id, [...doubt.binds, ...doubt.fuelLeak, ...doubt.faultCode, ...always])),
    );
  });
});

it.each<[Cause, boolean]>([
  ['oilLeak', true],
  ['binds', true],
  ['other', true],
  ['someoneHurt', false],
  ['falseAlarm', false],
  ['toolRestarted', false],
])('%s: somebody has hands in the engine: %s', (cause, so) => {
  expect(putsHandsIn(cause)).toBe(so);
});

describe('a restart of the tool', () => {
  const away = (longAway: boolean, step: StepId) => ({
    stop: { ...stoppedAt(step, null), cause: 'toolRestarted' as const, longAway },
  });
  const restarted = (longAway: boolean, step: StepId, done: readonly StepId[] = beforeKeyOn) =>
    putBack(done, step, 'toolRestarted', away(longAway, step));

  it('after a short absence has both stop words proved and the oil primed once more', () => {
    expect(restarted(false, 'keyOn.lamps')).toEqual(
      beforeKeyOn.filter(id => isIn(id, ['job.stopTechnician', 'job.stopSecond', 'noFuelCrank.*'])),
    );
  });

  it('after a long one has people, weather and what may lie about looked at anew', () => {
    expect(restarted(true, 'keyOn.lamps')).toEqual(beforeKeyOn.filter(id => isIn(id, doubt.toolRestarted)));
  });

  const wholeRun = steps.map(({ id }) => id).filter(id => !id.startsWith('signOff.'));

  it('behind a good shutdown has nothing but the stop words and the people looked at anew', () => {
    expect(restarted(false, 'signOff.cool', wholeRun)).toEqual(['job.stopTechnician', 'job.stopSecond']);
    expect(restarted(true, 'signOff.cool', wholeRun)).toEqual(wholeRun.filter(id => id.startsWith('job.')));
  });

  it('while it cranked without fuel begins that phase again, whatever else is so', () => {
    const cranked = beforeKeyOn.filter(id => id !== 'noFuelCrank.restored');
    expect(putBack(cranked, 'noFuelCrank.restored', 'falseAlarm')).toEqual(
      cranked.filter(id => id.startsWith('noFuelCrank.')),
    );
  });
});

describe('what was given back at the end', () => {
  const done = [...steps.map(({ id }) => id), 'job.autoStart', 'job.breaker', 'fill.jacketHeater'] as const;
  const given = (cause: Cause, known: Partial<Context>) =>
    putBack(done, 'signOff.sign', cause, known).filter(id => /autoStart|breaker|jacketHeater/.test(id));

  it('is taken again where the engine is started once more after it', () => {
    expect(given('fuelLeak', { takenAway: ['signOff.handBack'] })).toEqual([
      'job.autoStart',
      'job.breaker',
      'fill.jacketHeater',
    ]);
    expect(given('fuelLeak', { takenAway: [] })).toEqual([]);
    expect(given('falseAlarm', { takenAway: ['signOff.handBack'] })).toEqual([]);
  });
});

it('coolant that is mixed or filled in once more is bled and measured once more', () => {
  const after = ['fill.coolantBleed', 'fill.coolantBled', 'fill.coolantFreezePoint'];
  expect(redoneWith).toEqual({
    'fill.coolantFilled': after,
    'fill.coolantMix': ['fill.coolantFilled', ...after],
  });
});
