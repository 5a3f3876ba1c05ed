import { describe, expect, it } from 'vitest';
import type { Burst, Context, Reading } from '../../../machines/context.ts';
import { fastestWarmingKPerS, whyDoubted } from '../../../machines/limits/plausible.ts';
import type { EngineState } from '../../../machines/steps.ts';
import type { Quantity } from '../../../machines/vocabulary.ts';
import type { StepId } from '../../../prompts/types.ts';
import { demoSix } from '../helpers/profiles.ts';
import { knowing, readAt } from './known.ts';

const weather = { ambientTemperature: 5, coldestNight: -5 };
const cranked = (step: StepId, endS: number): Burst => ({
  step,
  startMs: endS * 1000 - 4000,
  endMs: endS * 1000,
});

/** A session that has read these, each at its time, beside the weather, and has fired so. */
const having = (
  readings: readonly Reading[],
  bursts: readonly Burst[] = [],
  shown: object = weather,
): Context => {
  const known = knowing(demoSix, shown);
  return { ...known, readings: [...known.readings, ...readings], bursts };
};

const held = (context: Context, quantity: Quantity, si: number, atS = 0, engine: EngineState = 'running') =>
  whyDoubted(context, { quantity, si, atMs: atS * 1000, engine });

const seconds = (si: number) => ({ unit: 's', si });

describe('why a value can hardly be true, for the record and for people', () => {
  it('a night warmer than the day, by more than both thermometers may miss', () => {
    expect(held(having([]), 'coldestNight', 11.1)).toMatchObject({
      why: 'whyAir',
      values: { air: { quantity: 'ambientTemperature', si: 5 } },
      verdict: {
        met: false,
        unit: 'degC',
        max: 11,
        rule: {
          id: 'night-not-above-day',
          source: 'the coldest of the time to come is not above now; common practice, no published source',
          validity: 'any',
        },
      },
    });
    expect(held(having([]), 'coldestNight', 11)).toBeNull();
    expect(held(having([], [], {}), 'coldestNight', 50)).toBeNull();
  });

  it('a vehicle at two heights: what it was, how long ago, and 50 m that each reading may miss', () => {
    const at = having(readAt('job.altitude', [[10, 300]], 'altitude'));
    expect(held(at, 'altitude', 401, 70)).toMatchObject({
      why: 'whyBefore',
      values: { before: { quantity: 'altitude', si: 300 }, time: seconds(60) },
      verdict: {
        min: 200,
        max: 400,
        unit: 'm',
        rule: {
          id: 'vehicle-stands',
          source: 'a vehicle that stands keeps its height',
          validity: 'one session',
        },
      },
    });
    expect(held(at, 'altitude', 199, 70)).not.toBeNull();
    expect(held(at, 'altitude', 200, 70)).toBeNull();
    expect(held(having([]), 'altitude', 3000)).toBeNull();
  });

  it('a cranking voltage that no starter leaves: half a volt below the battery, or below a full one', () => {
    const known = having(readAt('keyOn.battery', [[5, 12.4]], 'batteryVoltage'));
    expect(held(known, 'crankingVoltage', 11.95)).toMatchObject({
      why: 'whyStarterDraws',
      values: {},
      verdict: {
        unit: 'V',
        rule: {
          id: 'starter-draws-battery-down',
          source:
            'a starter takes hundreds of amperes through a resistance of milliohms: half a volt of twelve at least; common practice, no published source',
          validity: 'lead batteries, engine turned by its starter',
        },
      },
    });
    expect(held(known, 'crankingVoltage', 11.9)).toBeNull();
    expect(held(having([]), 'crankingVoltage', 12.25)).toBeNull();
    expect(held(having([]), 'crankingVoltage', 12.26)).not.toBeNull();
  });

  it('a battery that rests below what it held while cranking', () => {
    const known = having(readAt('noFuelCrank.voltage', [[5, 11]], 'crankingVoltage'));
    expect(held(known, 'batteryVoltage', 10.5)).toMatchObject({
      why: 'whyCranked',
      values: { before: { quantity: 'crankingVoltage', si: 11 } },
      verdict: { min: 10.6, rule: { id: 'starter-draws-battery-down' } },
    });
    expect(held(known, 'batteryVoltage', 10.6)).toBeNull();
    expect(held(having([]), 'batteryVoltage', 6)).toBeNull();
  });

  it('an oil pressure that the relief valve would not hold: a third above its setting, and the gauge', () => {
    const reliefKpa = demoSix.oilPressure.reliefKpa;
    const most = (reliefKpa * 4) / 3 + 35;
    expect(held(having([]), 'oilPressure', most + 1)).toMatchObject({
      why: 'whyRelief',
      values: { relief: { quantity: 'oilPressure', si: reliefKpa } },
      verdict: {
        unit: 'kPa',
        rule: {
          id: 'not-above-relief',
          source:
            'a relief valve that works holds cold oil to a third above its setting; common practice, no published source',
          validity: 'engine with a relief valve',
        },
      },
    });
    expect(held(having([]), 'oilPressure', most - 1)).toBeNull();
  });

  it('nothing of a quantity that nothing is known to hold against', () => {
    expect(held(having([]), 'biodieselShare', 100)).toBeNull();
  });
});

describe('why a coolant temperature can hardly be true', () => {
  const fired = [cranked('firstFire.crank', 100)];
  const heat = {
    id: 'change-within-heat-bounds',
    source: 'heat balance of the engine with the figures of its profile; see heat-bounds',
    validity: 'idling or standing engine',
  };

  it('colder than the coldest air: of now and of the night, whichever is known', () => {
    const doubt = held(having([], fired), 'coolantTemperature', -12.1, 110);
    expect(doubt).toMatchObject({
      why: 'whyAir',
      values: { air: { quantity: 'ambientTemperature', si: -5 } },
      verdict: {
        min: -12,
        rule: {
          id: 'not-below-air',
          source:
            'heat flows from warm to cold: nothing in an engine gets colder than the coldest air it stood in',
          validity: 'no cold water or fluid let in',
        },
      },
    });
    const day = having([], fired, { ambientTemperature: 5 });
    expect(held(day, 'coolantTemperature', -2.1, 110)).toMatchObject({ verdict: { min: -2 } });
    const night = having([], fired, { coldestNight: -20 });
    expect(held(night, 'coolantTemperature', -27.1, 110)).toMatchObject({ verdict: { min: -27 } });
  });

  it('nothing, where no air is known, or the engine was never cranked with fuel', () => {
    expect(held(having([], fired, {}), 'coolantTemperature', -50, 110)).toBeNull();
    expect(held(having([]), 'coolantTemperature', 200, 110)).toBeNull();
    const unfired = [cranked('noFuelCrank.untilPressure', 50)];
    expect(held(having([], unfired), 'coolantTemperature', 200, 110)).toBeNull();
  });

  it('warmer than a heated block and its run can have made it; cranking without fuel is no run', () => {
    const warmest = 5 + 30 + 0.375 * 20 + 8;
    for (const bursts of [fired, [...fired, cranked('noFuelCrank.holds', 115)]]) {
      expect(held(having([], bursts), 'coolantTemperature', warmest + 1, 120)).toMatchObject({
        why: 'whyRunning',
        values: { time: seconds(20) },
        verdict: { rule: heat },
      });
      expect(held(having([], bursts), 'coolantTemperature', warmest - 0.1, 120)).toBeNull();
    }
  });

  it('warmer than its run can have made it, whatever was read in this run', () => {
    const read = readAt('warmUp.watch', [[100, 60]]);
    expect(held(having(read, fired), 'coolantTemperature', 61, 120)).toMatchObject({ why: 'whyRunning' });
  });

  it('warmer than an earlier run left it, and this one can have made it', () => {
    const before = readAt('checks.coolant', [[90, 60]]);
    const warmest = 60 + 0.375 * 20 + 8;
    expect(held(having(before, fired), 'coolantTemperature', warmest - 0.1, 120)).toBeNull();
    expect(held(having(before, fired), 'coolantTemperature', warmest + 1, 120)).toMatchObject({
      why: 'whyRunning',
    });
  });

  it('faster than the fuel can heat it: what it was, and how long ago', () => {
    const last = readAt('warmUp.watch', [[100, 20]]);
    const warmest = 20 + 10 + 0.375 * 10 + 8;
    expect(held(having(last, fired), 'coolantTemperature', warmest + 0.1, 110)).toMatchObject({
      why: 'whyBefore',
      values: { before: { quantity: 'coolantTemperature', si: 20 }, time: seconds(10) },
      verdict: { rule: heat },
    });
    expect(held(having(last, fired), 'coolantTemperature', warmest - 0.1, 110)).toBeNull();
    // Read in the moment of the last crank it belongs to this run.
    expect(
      held(having(readAt('warmUp.watch', [[100, 80]]), fired), 'coolantTemperature', 29.4, 110),
    ).toMatchObject({
      verdict: { min: 29.5 },
    });
  });

  it('colder, of an engine that stands, than the air can have made it since key-off', () => {
    const keyOff = readAt('shutdown.coolant', [[1000, 85]]);
    const ran = [cranked('firstFire.crank', 100)];
    const doubt = held(having(keyOff, ran), 'coolantTemperature', 20, 1600, 'off');
    expect(doubt).toMatchObject({
      why: 'whyBefore',
      values: { before: { quantity: 'coolantTemperature', si: 85 }, time: seconds(600) },
      verdict: { rule: heat },
    });
    expect(doubt?.verdict.min).toBeCloseTo(-5 + 90 * Math.exp(-600 / 2745) - 8, 0);
  });

  it('nothing by what was read before this run', () => {
    const ran = [cranked('firstFire.crank', 100)];
    const earlier = readAt('shutdown.coolant', [[50, 85]]);
    expect(held(having(earlier, ran), 'coolantTemperature', 6, 160, 'off')).toBeNull();
    // Stopped as it ran: the last value beside it holds.
    const running = readAt('warmUp.watch', [[150, 85]]);
    expect(held(having(running, ran), 'coolantTemperature', 6, 160, 'off')).not.toBeNull();
    expect(held(having(running, ran), 'coolantTemperature', 80, 160, 'off')).toBeNull();
    const inThatMoment = readAt('signOff.cool', [[100, 85]]);
    expect(held(having(inThatMoment, ran), 'coolantTemperature', 6, 160, 'off')).not.toBeNull();
  });
});

describe('as fast as the coolant of an engine can warm', () => {
  it('is 0.375 K/s of demo-six, worked out in plausible.test.ts', () => {
    expect(fastestWarmingKPerS(demoSix)).toBeCloseTo(0.375, 3);
  });

  it('is not bounded where its figures have no answer', () => {
    const impossible = { ...demoSix, engine: { ...demoSix.engine, displacementL: 0 } };
    expect(fastestWarmingKPerS(impossible)).toBe(Number.POSITIVE_INFINITY);
    const context = { ...having(readAt('warmUp.watch', [[100, 20]]), fired()), profile: impossible };
    expect(held(context, 'coolantTemperature', 200, 101)).toBeNull();
  });
});

const fired = () => [cranked('firstFire.crank', 100)];
