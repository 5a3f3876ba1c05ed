import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import {
  judgeFirstPressure,
  judgeOilPressure,
  oilPressureFloor,
} from '../../src/engineering/oil-pressure.ts';

const TABLE = [
  {
    oilC: 20,
    floorKpa: [
      [700, 200],
      [1500, 320],
      [2500, 400],
    ],
  },
  {
    oilC: 100,
    floorKpa: [
      [700, 80],
      [1500, 180],
      [2500, 280],
    ],
  },
] as const;

describe('oil pressure floor', () => {
  test.each([
    [700, 100, 80],
    [1100, 100, 130],
    [1500, 60, 250],
    [1500, -20, 320],
  ])('at %s rpm and %s degC is %s kPa', (speedRpm, oilC, kpa) => {
    const floor = oilPressureFloor(speedRpm, oilC, TABLE);
    expect(floor.ok && floor.value).toBeCloseTo(kpa, 9);
  });

  test('rises with speed and falls with heat, everywhere in the table', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 700, max: 2400 }),
        fc.integer({ min: -40, max: 90 }),
        (speedRpm, oilC) => {
          const at = (rpm: number, c: number): number => {
            const floor = oilPressureFloor(rpm, c, TABLE);
            return floor.ok ? floor.value : Number.NaN;
          };
          expect(at(speedRpm + 100, oilC)).toBeGreaterThan(at(speedRpm, oilC));
          expect(at(speedRpm, oilC + 10)).toBeLessThanOrEqual(at(speedRpm, oilC));
        },
      ),
    );
  });

  test.each([
    [600, 80, TABLE, 'outOfRange', 'speedRpm'],
    [2600, 80, TABLE, 'outOfRange', 'speedRpm'],
    [700, 101, TABLE, 'outOfRange', 'oilC'],
    [Number.NaN, 80, TABLE, 'notANumber', 'speedRpm'],
    [700, 80, [], 'missing', 'floorKpa'],
    [700, 80, [TABLE[1], TABLE[0]], 'contradictory', 'floorKpa at 20 degC'],
    [700, 80, [{ oilC: 100, floorKpa: [] }], 'missing', 'floorKpa at 100 degC'],
    [
      700,
      80,
      [
        {
          oilC: 100,
          floorKpa: [
            [700, 200],
            [900, 100],
          ],
        },
      ],
      'contradictory',
      'floorKpa at 100 degC',
    ],
    [700, 80, [{ oilC: 100, floorKpa: [[700, Number.NaN]] }], 'notANumber', 'floorKpa at 100 degC'],
  ] as const)('is never guessed (case %#)', (speedRpm, oilC, table, code, input) => {
    expect(oilPressureFloor(speedRpm, oilC, table)).toMatchObject({ ok: false, issue: { code, input } });
  });

  test('may stay the same over a stretch of speeds', () => {
    const flat = [{ oilC: 100, floorKpa: [[700, 80] as const, [1500, 80] as const] }];
    expect(oilPressureFloor(1100, 100, flat)).toMatchObject({ value: 80 });
  });

  test('a pressure on the floor is met, one below it is not', () => {
    const at = { speedRpm: 700, oilC: 100 };
    expect(judgeOilPressure(80, at, TABLE)).toMatchObject({ value: { met: true, margin: 0 } });
    expect(judgeOilPressure(79, at, TABLE)).toMatchObject({ value: { met: false, margin: -1 } });
    expect(judgeOilPressure(Number.NaN, at, TABLE)).toMatchObject({ issue: { code: 'notANumber' } });
    expect(judgeOilPressure(80, { ...at, oilC: 150 }, TABLE)).toMatchObject({
      issue: { code: 'outOfRange' },
    });
  });
});

describe('oil pressure after first fire', () => {
  const LIMITS = { leastKpa: 100, withinS: 10 };
  const rising = [0, 20, 60, 120, 200].map((value, i) => ({ timeS: 2 * i, value }));
  const stateOf = (readings: readonly { timeS: number; value: number }[], nowS: number) => {
    const result = judgeFirstPressure(readings, nowS, LIMITS);
    return result.ok ? result.value.state : result.issue.code;
  };

  test('is reached when it shows in time and stays', () => {
    expect(judgeFirstPressure(rising, 8, LIMITS)).toMatchObject({
      value: { state: 'reached', verdict: { value: 6, margin: 4 } },
    });
  });

  test('is waited for until its time is up, and then late, also when nobody says anything', () => {
    expect(stateOf(rising.slice(0, 3), 9)).toBe('waiting');
    expect(stateOf(rising.slice(0, 3), 10.1)).toBe('late');
    expect(stateOf([], 10.1)).toBe('late');
  });

  test('counts when it is exactly enough, at the very moment of first fire and at the last one', () => {
    expect(stateOf([{ timeS: 0, value: 100 }], 5)).toBe('reached');
    expect(stateOf([{ timeS: 10, value: 100 }], 10)).toBe('reached');
    expect(stateOf([], 10)).toBe('waiting');
    expect(stateOf([{ timeS: 10, value: 99.9 }], 10)).toBe('waiting');
  });

  test('is late even if it comes afterwards', () => {
    expect(stateOf([{ timeS: 12, value: 300 }], 15)).toBe('late');
  });

  test('is lost when it falls away again', () => {
    expect(stateOf([...rising, { timeS: 9, value: 40 }], 9)).toBe('lost');
  });

  test('pressure from before first fire does not count', () => {
    expect(
      stateOf(
        [
          { timeS: -3, value: 300 },
          { timeS: 1, value: 10 },
        ],
        4,
      ),
    ).toBe('waiting');
  });

  test('a reading from the future, a negative pressure and a missing limit are refused', () => {
    expect(stateOf(rising, 5)).toBe('contradictory');
    expect(stateOf([{ timeS: 0, value: -5 }], 5)).toBe('outOfRange');
    expect(judgeFirstPressure([], 5, { ...LIMITS, withinS: Number.NaN })).toMatchObject({
      issue: { code: 'notANumber', input: 'withinS' },
    });
  });
});
