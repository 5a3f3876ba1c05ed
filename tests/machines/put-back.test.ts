import { describe, expect, it } from 'vitest';
import { procedureFor } from '../../machines/first-start.ts';
import { doneAfterStop, redoneWith, reopenedSteps } from '../../machines/reopening.ts';
import type { Cause } from '../../machines/vocabulary.ts';
import type { Profile } from '../../src/profile/schema.ts';
import { demoBoat, demoFour, demoGenset, demoSix } from './helpers/profiles.ts';
import { stoppedAt } from './helpers/stopped-at.ts';
import { knowing } from './limits/known.ts';

const MAKE_SAFE = 'walkRound.tools barOver.toolOut';
const COOLANT = 'fill.coolantCool fill.coolantFilled fill.coolantBled walkRound.hoses';
const OIL = 'fill.oilLevel';
const ALL_BEFORE_KEY_ON = 'job. fill. prime. walkRound. barOver. noFuelCrank.';

/** What a stop with the key just on puts back for each cause: steps, or all steps of a phase (`prime.`). */
const boat: Record<Cause, string> = {
  falseAlarm: '',
  drill: '',
  coolantLeak: `${COOLANT} ${MAKE_SAFE} walkRound.rawWater walkRound.strainer`,
  coolantInCylinder: `${COOLANT} ${OIL} walkRound.tools walkRound.rawWater walkRound.strainer barOver. noFuelCrank.`,
  oilLeak: `fill.oilFilterPreFilled ${OIL} ${MAKE_SAFE} noFuelCrank.`,
  fuelLeak: `fill.firstFilterPreFilled fill.secondFilterDry prime. ${MAKE_SAFE}`,
  noOilPressure: `fill.oilFilterPreFilled ${OIL} walkRound.sensors ${MAKE_SAFE} barOver.isolated barOver.turboFeed noFuelCrank.`,
  noStart: `fill.fuelGrade fill.firstFilterPreFilled fill.secondFilterDry prime. walkRound.sensors ${MAKE_SAFE}`,
  firedUnfuelled: `job.cutOff ${MAKE_SAFE} noFuelCrank.`,
  runsUnasked: `job.cutOff ${MAKE_SAFE} noFuelCrank.`,
  binds: 'walkRound.tools barOver.',
  overspeed: 'job.cutOff walkRound. barOver. noFuelCrank.',
  overheating: `${COOLANT} ${MAKE_SAFE} walkRound.belts walkRound.rawWater walkRound.strainer`,
  faultCode: `walkRound.sensors walkRound.wiring ${MAKE_SAFE}`,
  smokeOrFire: ALL_BEFORE_KEY_ON,
  someoneHurt: 'job. walkRound. noFuelCrank.',
  looseOrNoise: 'walkRound. barOver. noFuelCrank.',
  knocking: 'walkRound. barOver. noFuelCrank.',
  toolRestarted:
    'job. fill.coolantCool fill.coolantFreezePoint fill.oilGrade fill.fuelGrade walkRound.tools walkRound.rawWater noFuelCrank.',
  other: 'walkRound. barOver.toolOut noFuelCrank.',
};

const beforeKeyOn = (profile: Profile) => {
  const steps = procedureFor(profile);
  return steps.slice(
    0,
    steps.findIndex(({ id }) => id.startsWith('keyOn.')),
  );
};

function putBack(profile: Profile, cause: Cause, { longAway = true, handedBack = false } = {}) {
  const steps = procedureFor(profile);
  const done = beforeKeyOn(profile).map(({ id }) => id);
  const stop = { ...stoppedAt('keyOn.lamps', null), longAway };
  const context = knowing(
    profile,
    {},
    { done, step: 'keyOn.lamps', stop, takenAway: handedBack ? ['signOff.handBack'] : [] },
  );
  return reopenedSteps(done, doneAfterStop(steps, context, cause));
}

/** The steps of an engine that a list of steps and phases names, in their order. */
function named(profile: Profile, list: string) {
  const names = list.split(' ').filter(name => name !== '');
  const ids = beforeKeyOn(profile).map(({ id }) => id);
  for (const name of names)
    expect(
      ids.some(id => id === name || (name.endsWith('.') && id.startsWith(name))),
      name,
    ).toBe(true);
  return ids.filter(id => names.some(name => id === name || (name.endsWith('.') && id.startsWith(name))));
}

describe('what a stop puts back on the list', () => {
  it.each(Object.entries(boat))('of a boat: %s', (cause, list) => {
    expect(putBack(demoBoat, cause as Cause)).toEqual(named(demoBoat, list));
  });

  it.each([
    ['coolantLeak', `fill.jacketHeater ${COOLANT} ${MAKE_SAFE} noFuelCrank.manual`],
    ['oilLeak', `fill.oilFilterDry ${OIL} ${MAKE_SAFE} noFuelCrank.`],
    ['fuelLeak', `fill.firstFilterDry prime. ${MAKE_SAFE} noFuelCrank.manual`],
    // All was off: the mode switch is not where it was put.
    ['falseAlarm', 'noFuelCrank.manual'],
  ] as const)('of a set: %s', (cause, list) => {
    expect(putBack(demoGenset, cause)).toEqual(named(demoGenset, list));
  });

  it('of a truck whose main gallery is filled by hand: that, too, where its oil pressure was lost', () => {
    expect(putBack(demoSix, 'noOilPressure')).toContain('barOver.prelube');
    expect(putBack(demoSix, 'oilLeak')).not.toContain('barOver.prelube');
  });

  it('of a program that was away for a moment: the stop words, and cranking without fuel', () => {
    expect(putBack(demoFour, 'toolRestarted', { longAway: false })).toEqual(
      named(demoFour, 'job.stopTechnician job.stopSecond noFuelCrank.'),
    );
  });

  it('of a set that had been given back: what was locked out before', () => {
    expect(putBack(demoGenset, 'falseAlarm', { handedBack: true })).toEqual(
      named(demoGenset, 'job.autoStart job.breaker fill.jacketHeater noFuelCrank.manual'),
    );
  });
});

it('coolant that is no longer mixed or filled as it was is filled, bled and measured anew', () => {
  const filledOn = ['fill.coolantBleed', 'fill.coolantBled', 'fill.coolantFreezePoint'];
  expect(redoneWith).toEqual({
    'fill.coolantFilled': filledOn,
    'fill.coolantMix': ['fill.coolantFilled', ...filledOn],
  });
});
