import { describe, expect, it } from 'vitest';
import type { Burst } from '../../../machines/context.ts';
import { isFarFromThermostat, nextWarmUpLookS } from '../../../machines/limits/engine.ts';
import type { StepId } from '../../../prompts/types.ts';
import { demoSix } from '../helpers/profiles.ts';
import { knowing, readAt } from './known.ts';

/* Demo-six: looked at every 60 s, and never later than four times that; its thermostat opens at 82 degC. */
const cranked = (endS: number): Burst => ({ step: 'firstFire.crank', startMs: 0, endMs: endS * 1000 });
const next = (
  looks: readonly (readonly [seconds: number, si: number])[],
  bursts: readonly Burst[] = [cranked(10)],
  step: StepId = 'warmUp.watch',
) => nextWarmUpLookS(knowing(demoSix, {}, { readings: readAt(step, looks), bursts }));

describe('the next look at the coolant while it warms', () => {
  it('is when it can have come to the thermostat by the last two looks, and 2 K by how a needle is read', () => {
    // 0.1 K/s and 2 K in 100 s more: 0.12 K/s; 82 - 60 K.
    expect(
      next([
        [100, 50],
        [200, 60],
      ]),
    ).toBeCloseTo(22 / 0.12, 9);
    expect(
      next([
        [0, 5],
        [20, 8],
        [100, 50],
        [200, 60],
      ]),
    ).toBeCloseTo(22 / 0.12, 9);
  });

  it('is by the fastest that this engine can warm where there was one look only: 0.375 K/s', () => {
    expect(next([[100, 30]])).toBeCloseTo(52 / 0.375, 0);
  });

  it('is twice the interval of the profile near the thermostat, or sooner where it could come to 107 degC before', () => {
    expect(
      next([
        [100, 70],
        [200, 81],
      ]),
    ).toBe(120);
    // 22 K and 2 K in 100 s: 0.24 K/s; 107 - 92 K.
    expect(
      next([
        [100, 70],
        [200, 92],
      ]),
    ).toBeCloseTo(15 / 0.24, 9);
  });

  it('is never sooner than that interval: close to 107 degC, or never read', () => {
    expect(next([])).toBe(60);
    expect(
      next([
        [100, 70],
        [200, 95],
      ]),
    ).toBe(60);
  });

  it('is not later than four of them: in the cold, standing still, and falling', () => {
    expect(
      next([
        [100, 20],
        [200, 20],
      ]),
    ).toBe(240);
    expect(
      next([
        [100, 60],
        [200, 56],
      ]),
    ).toBe(240);
    expect(
      next([
        [100, 60],
        [200, 40],
      ]),
    ).toBe(240);
    // By just what the needle may be misread: it stands still.
    expect(
      next([
        [100, 86],
        [200, 84],
      ]),
    ).toBe(240);
  });

  it('goes by this run alone, and by the coolant alone', () => {
    const earlier = [
      [5, 5],
      [50, 50],
    ] as const;
    for (const bursts of [
      [cranked(100)],
      [cranked(10), cranked(100)],
      [cranked(4), cranked(10), cranked(100)],
    ])
      expect(next([...earlier, [160, 30]], bursts)).toBeCloseTo(52 / 0.375, 0);
    expect(
      next(
        [
          [100, 50],
          [200, 60],
        ],
        [cranked(100)],
      ),
    ).toBeCloseTo(22 / 0.12, 9);
    expect(
      next(
        [
          [100, 50],
          [200, 60],
        ],
        [],
      ),
    ).toBeCloseTo(22 / 0.12, 9);
    const readings = [
      ...readAt('warmUp.watch', [
        [100, 50],
        [200, 60],
      ]),
      ...readAt(
        'checks.oilPressure',
        [
          [220, 300],
          [230, 310],
        ],
        'oilPressure',
      ),
    ];
    expect(nextWarmUpLookS(knowing(demoSix, {}, { readings, bursts: [cranked(10)] }))).toBeCloseTo(
      22 / 0.12,
      9,
    );
  });
});

describe('an engine far from its thermostat', () => {
  it('is one more than 20 K below its opening', () => {
    expect(isFarFromThermostat(knowing(demoSix, {}), 61.9)).toBe(true);
    expect(isFarFromThermostat(knowing(demoSix, {}), 62)).toBe(false);
    expect(isFarFromThermostat(knowing(demoSix, {}), 90)).toBe(false);
  });
});
