import { describe, expect, it } from 'vitest';
import { Driver } from './helpers/driver.ts';
import { effectOf, holdsAfter, unmetNeeds } from './helpers/oracle.ts';
import { stepIds } from './helpers/paths.ts';
import { changed, demoFour, demoSix } from './helpers/profiles.ts';

const runs = {
  'demo-six': new Driver(demoSix).goodToTheEnd(),
  'demo-four': new Driver(demoFour).goodToTheEnd(),
};

const passedIn = (driver: Driver) =>
  driver.notes.flatMap(({ kind, data }) => (kind === 'passed' ? [String(data.step)] : []));

describe.each(Object.entries(runs))('an all-good start with %s', (_, run) => {
  it('ends signed off', () => {
    expect(run.name).toBe('signedOff');
    expect(run.over).toBe(true);
  });

  it('passes every step of the procedure that applies, once and in its order', () => {
    const applying = stepIds(run.profile).filter(
      // Coolant is touched once, a load tester was at hand, the battery cranked well, no code is watched, the thermostat opens before the idle has lasted too long, and nothing is left open.
      id =>
        ![
          'fill.coolantCool',
          'noFuelCrank.batteryRest',
          'keyOn.battery',
          'firstFire.transient',
          'firstFire.warningLamp',
          'warmUp.fastIdle',
          'signOff.openItems',
        ].includes(id),
    );
    expect(passedIn(run)).toEqual(applying);
    expect(run.context.done).toEqual(applying);
  });

  it('meets at each step what a second opinion asks for', () => {
    const ids = stepIds(run.profile);
    let held = new Set<string>();
    for (const happened of run.history) {
      const effect = effectOf(happened, ids, run.profile);
      expect(unmetNeeds(held, effect)).toEqual([]);
      held = holdsAfter(held, effect);
    }
    expect(held.has('signOff.sign')).toBe(true);
  });

  it('cranks for oil pressure, that it holds, for the first fire, and again after a short first run', () => {
    expect(run.context.bursts.map(burst => burst.step)).toEqual([
      'noFuelCrank.untilPressure',
      'noFuelCrank.holds',
      'firstFire.crank',
      ...(run.profile.firstRun ? ['firstRun.restart'] : []),
    ]);
    for (const burst of run.context.bursts) expect(burst.endMs).toBeGreaterThan(burst.startMs);
  });
});

describe('the steps follow the profile', () => {
  const six = stepIds(demoSix);
  const four = stepIds(demoFour);
  const only = (these: string[], others: string[]) => these.filter(id => !others.includes(id));

  it('two fuel filters, a pre-filled oil filter and a heater ask for more than one filter and none', () => {
    expect(only(six, four)).toEqual([
      'fill.oilFilterPreFilled',
      'fill.firstFilterPreFilled',
      'fill.secondFilterDry',
      'barOver.prelube',
      'keyOn.heaterHold',
      'keyOn.heaterDone',
      'firstRun.run',
      'firstRun.keyOff',
      'firstRun.drain',
      'firstRun.oilLevel',
      'firstRun.look',
      'firstRun.restart',
      'firstRun.oilPressure',
      'shutdown.thirdSoak',
      'shutdown.thirdLook',
    ]);
    expect(only(four, six)).toEqual(['fill.oilFilterDry', 'fill.firstFilterDry']);
  });

  it('what both need comes in the same order', () => {
    expect(six.filter(id => four.includes(id))).toEqual(four.filter(id => six.includes(id)));
  });

  it('six sweeps in the profile are six sweeps in the procedure', () => {
    const sweeps = [...demoFour.sweeps, { rpm: 2400 }];
    expect(stepIds(changed(demoFour, { sweeps })).filter(id => id.startsWith('sweeps.'))).toEqual([
      'sweeps.first',
      'sweeps.second',
      'sweeps.third',
      'sweeps.fourth',
      'sweeps.fifth',
      'sweeps.sixth',
      'sweeps.faults',
    ]);
  });

  it('with a heater that does not work at this temperature there is no hold, but its lamp is asked for', () => {
    const warm = new Driver(
      changed(demoSix, {
        heater: {
          ...(demoSix.heater ?? { kind: 'grid', lampId: 'waitToStart', toleranceS: 15 }),
          waits: [
            { atC: -20, waitS: 30 },
            { atC: 4, waitS: 0 },
            { atC: 60, waitS: 0 },
          ],
        },
      }),
    ).goodUntil(driver => driver.context.step === 'firstFire.crank');
    expect(passedIn(warm)).not.toContain('keyOn.heaterHold');
    expect(passedIn(warm)).toContain('keyOn.heaterDone');
  });
});
