import { describe, expect, it } from 'vitest';
import type { Context } from '../../../machines/context.ts';
import { coolEnough, warmUpOutlook } from '../../../machines/limits/engine.ts';
import type { StepId } from '../../../prompts/types.ts';
import { demoSix } from '../helpers/profiles.ts';
import { knowing, readAt } from './known.ts';

type Points = readonly (readonly [seconds: number, si: number])[];

/** Read every so many seconds from a curve. */
const along = (curve: (seconds: number) => number, count: number, everyS: number, fromS = 0): Points =>
  Array.from({ length: count }, (_, i) => [fromS + i * everyS, curve(fromS + i * everyS)] as const);

describe('a radiator that is still too hot is looked at again', () => {
  const cooling = (seconds: number) => 20 + 70 * Math.exp(-seconds / 2000);
  const air = { quantity: 'ambientTemperature', si: 20, atMs: 0, step: 'job.ambient' } as const;
  const told = (...readings: Context['readings'][]) =>
    coolEnough(knowing(demoSix, {}, { readings: [air, ...readings.flat()] }), 60);
  const again = (...readings: Context['readings'][]) => {
    const judged = told(...readings);
    if (judged.ok || !('line' in judged)) throw new Error(JSON.stringify(judged));
    expect(judged).toMatchObject({ line: 'notCoolYet', verdict: { met: false, max: 45, unit: 'degC' } });
    const time = judged.values?.time;
    if (typeof time !== 'object' || !('si' in time) || !('unit' in time))
      throw new Error('No time was said.');
    expect(time.unit).toBe('s');
    return time.si;
  };

  it('after ten minutes, where nothing is known of how it cools', () => {
    expect(again()).toBe(600);
    expect(again(readAt('signOff.cool', [[0, 90]]))).toBe(600);
  });

  it('after a minute, while it still gets hotter; readings at key-off and since then count together', () => {
    expect(again(readAt('shutdown.coolant', [[0, 85]]), readAt('signOff.cool', [[60, 90]]))).toBe(60);
  });

  it('when it may be cool by the way it has cooled', () => {
    // 45 degC are reached after 2000 s x ln(70/25), 2059 s.
    const seconds = again(readAt('signOff.cool', along(cooling, 10, 200)));
    expect(seconds).toBeGreaterThan(120);
    expect(seconds).toBeLessThanOrEqual(2059.3 - 1800);
  });

  it('whatever was read before the key was off, or of something else', () => {
    const one = readAt('signOff.cool', [[900, 90]]);
    expect(
      again(
        readAt(
          'warmUp.watch',
          along(t => 20 + t / 10, 6, 100),
        ),
        one,
      ),
    ).toBe(600);
    expect(again(readAt('signOff.cool', [[600, 20]], 'ambientTemperature'), one)).toBe(600);
    expect(again(readAt('warmUp.watch', [[600, 200]], 'oilPressure'), one)).toBe(600);
  });

  it('after ten minutes where it was cool twice and is not now', () => {
    expect(
      again(
        readAt('signOff.cool', [
          [0, 44],
          [60, 44],
        ]),
      ),
    ).toBe(600);
  });

  it('unless it is cool twice, so long apart, with nothing hot between, or what was read is no number', () => {
    const cool = (points: Points, atS?: number) =>
      coolEnough(
        knowing(demoSix, {}, { readings: readAt('signOff.cool', points) }),
        45,
        atS === undefined ? undefined : atS * 1000,
      );
    const once = (waitS: number) => ({
      ok: false,
      line: 'coolOnce',
      verdict: { met: true, max: 45 },
      values: { time: { unit: 's', si: waitS } },
      waitS,
    });
    expect(cool([], 100)).toMatchObject(once(60));
    expect(cool([[0, 90]], 100)).toMatchObject(once(60));
    expect(cool([[41, 45]], 100)).toMatchObject(once(1));
    expect(cool([[40, 45]], 100)).toMatchObject({ ok: true, value: { met: true } });
    expect(
      cool(
        [
          [0, 44],
          [50, 46],
        ],
        100,
      ),
    ).toMatchObject(once(60));
    // Looked at in between, it is cool since the first of them.
    expect(
      cool(
        [
          [40, 45],
          [70, 44],
        ],
        100,
      ),
    ).toMatchObject({ ok: true });
    // Nobody says when it was read.
    expect(cool([[0, 40]])).toMatchObject(once(60));
    expect(coolEnough(knowing(demoSix, {}), Number.NaN)).toMatchObject({
      ok: false,
      issue: { code: 'notANumber' },
    });
  });
});

describe('the warm-up so far', () => {
  const step: StepId = 'warmUp.watch';
  const heating =
    (finalC: number, tauS: number) =>
    (seconds: number): number =>
      Math.round(finalC - (finalC - 10) * Math.exp(-seconds / tauS));
  const fired = (endMs: number) => ({
    bursts: [{ step: 'firstFire.crank' as const, startMs: endMs - 5000, endMs }],
  });
  const outlook = (points: Points, more: Partial<Context> = {}) =>
    warmUpOutlook(knowing(demoSix, {}, { step, readings: readAt(step, points), ...more }));
  const warming = along(heating(110, 500), 10, 50);

  it('is only noted while it says nothing', () => {
    expect(outlook([])).toEqual({ line: 'warmUpNoted', values: {} });
    expect(outlook(warming.slice(0, 5))).toEqual({ line: 'warmUpNoted', values: {} });
  });

  it('tells how long it takes to the thermostat, and within what bounds', () => {
    const { line, values } = outlook(warming);
    expect(line).toBe('warmUpLeft');
    // 82 degC after 500 s x ln(100/28), 636 s; the last reading was at 450.
    const si = (name: string) => {
      const value = values[name];
      if (typeof value !== 'object' || !('si' in value) || !('unit' in value)) throw new Error(`No ${name}.`);
      expect(value.unit).toBe('s');
      return value.si;
    };
    expect(Object.keys(values).toSorted()).toEqual(['high', 'low', 'time']);
    expect(si('low')).toBeLessThan(186);
    expect(si('high')).toBeGreaterThan(186);
    expect(Math.abs(si('time') - 186)).toBeLessThan(60);
  });

  it('tells the least time alone, where the longest cannot be told', () => {
    const { line, values } = outlook(along(heating(110, 500), 7, 20));
    expect(line).toBe('warmUpLeftOpen');
    expect(values).toEqual({
      time: { unit: 's', si: expect.any(Number) },
      low: { unit: 's', si: expect.any(Number) },
    });
  });

  it('tells that the thermostat should open, or has opened', () => {
    const done = { line: 'warmUpAtThermostat', values: {} };
    expect(outlook(along(heating(110, 500), 13, 60))).toEqual(done);
    const bent = along(t => (t < 640 ? heating(110, 500)(t) : Math.round(82 + (t - 640) * 0.012)), 60, 13);
    expect(outlook(bent)).toEqual(done);
  });

  it('tells what is suspected of the thermostat', () => {
    expect(outlook(along(heating(65, 250), 14, 70))).toEqual({ line: 'warmUpStuckOpen', values: {} });
    expect(outlook([[0, 99]])).toEqual({ line: 'warmUpStuckShut', values: {} });
  });

  it('is that of this run of the engine: from the moment on at which the starter let go', () => {
    expect(outlook(warming, fired(0)).line).toBe('warmUpLeft');
    expect(outlook(warming.slice(0, 6), fired(0)).line).not.toBe('warmUpNoted');
    expect(outlook(warming.slice(0, 6), fired(1)).line).toBe('warmUpNoted');
    expect(outlook([[0, 99]], fired(1)).line).toBe('warmUpNoted');
  });

  it('is that of this speed, and of the coolant', () => {
    const elsewhere = readAt('warmUp.fastIdle', warming);
    const other = readAt(step, warming, 'oilPressure');
    for (const readings of [elsewhere, other])
      expect(outlook([], { readings })).toEqual({ line: 'warmUpNoted', values: {} });
  });
});
