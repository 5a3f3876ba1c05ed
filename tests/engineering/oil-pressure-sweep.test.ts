import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { judgeSweep, type SweepPoint } from '../../src/engineering/oil-pressure-sweep.ts';

const sweep = (speeds: readonly number[], pressureKpa: (speedRpm: number) => number): SweepPoint[] =>
  speeds.map(speedRpm => ({ speedRpm, pressureKpa: pressureKpa(speedRpm) }));

const SPEEDS = [700, 1000, 1300, 1600, 1900, 2200];

const stateOf = (points: readonly SweepPoint[], reliefKpa?: number) => {
  const result = judgeSweep(points, reliefKpa);
  return result.ok ? result.value.state : result.issue.code;
};

describe('oil pressure in a sweep', () => {
  test('rises with speed, however it rises', () => {
    fc.assert(
      fc.property(fc.double({ min: 0.3, max: 2, noNaN: true }), power => {
        const result = judgeSweep(sweep(SPEEDS, rpm => 100 + 200 * (rpm / 2200) ** power));
        expect(result).toMatchObject({ value: { state: 'rises', rank: { met: true } } });
        expect(result.ok && result.value.rank.value).toBeCloseTo(1, 12);
      }),
    );
  });

  test('is judged the same whatever the order of the points', () => {
    const points = sweep(SPEEDS, rpm => 50 + rpm / 10 + (rpm % 400) / 8);
    fc.assert(
      fc.property(fc.shuffledSubarray(points, { minLength: points.length }), shuffled => {
        expect(stateOf(shuffled)).toBe(stateOf(points));
      }),
    );
  });

  test('that stays flat, wanders or falls is said to', () => {
    expect(stateOf(sweep(SPEEDS, () => 250))).toBe('flat');
    expect(
      stateOf(
        SPEEDS.map((speedRpm, i) => ({ speedRpm, pressureKpa: [200, 240, 190, 230, 210, 220][i] ?? 0 })),
      ),
    ).toBe('flat');
    expect(stateOf(sweep(SPEEDS, rpm => 500 - rpm / 10))).toBe('falls');
  });

  test('may be as narrow as a third of its lowest speed, and no narrower', () => {
    const upTo = (fastest: number) => sweep([900, 950, 1000, 1100, fastest], rpm => rpm / 5);
    expect(stateOf(upTo(1200))).toBe('rises');
    expect(stateOf(upTo(1199))).toBe('tooLittleData');
  });

  test('leaves out a point that stands 5 % below the relief pressure, and none that is lower', () => {
    const relieved = (pressureKpa: number) => {
      const points = [...sweep(SPEEDS, rpm => rpm / 10), { speedRpm: 2400, pressureKpa }];
      const result = judgeSweep(points, 400);
      return result.ok ? result.value.relieved : result.issue.code;
    };
    expect(relieved(380)).toBe(1);
    expect(relieved(379.9)).toBe(0);
  });

  test('points that the relief valve holds are left out', () => {
    const held = sweep([...SPEEDS, 2500, 2800], rpm => Math.min(400, rpm / 6));
    expect(judgeSweep(held, 400)).toMatchObject({ value: { state: 'rises', relieved: 2 } });
  });

  describe('of which the relief valve holds so much that no rank is left', () => {
    const FIVE = [700, 1000, 1300, 1600, 1900];
    const readAt = (pressures: readonly number[]) =>
      stateOf(
        FIVE.map((speedRpm, i) => ({ speedRpm, pressureKpa: pressures[i] ?? 0 })),
        400,
      );

    test.each([
      ['all of it', [400, 400, 400, 400, 400], 'held'],
      ['from the second speed on', [250, 380, 390, 400, 400], 'held'],
      ['at the last speed only', [200, 240, 280, 320, 380], 'held'],
      ['but what is below it falls', [240, 220, 400, 400, 400], 'flat'],
      ['but what is below it stays flat', [240, 240, 240, 240, 400], 'flat'],
      ['but a faster point is below it', [400, 400, 400, 400, 300], 'flat'],
      ['but not the fastest', [380, 200, 240, 280, 320], 'flat'],
    ] as const)('%s', (_, pressures, state) => {
      expect(readAt(pressures)).toBe(state);
    });

    test('the rest has to be enough: five points over a third of the lowest speed', () => {
      const held = (speeds: readonly number[]) =>
        stateOf(
          sweep(speeds, () => 400),
          400,
        );
      expect(held([900, 950, 1000, 1100, 1200])).toBe('held');
      expect(held([900, 950, 1000, 1100, 1199])).toBe('tooLittleData');
      expect(held([900, 1000, 1200, 1300])).toBe('tooLittleData');
    });
  });

  test.each([
    ['four points', sweep([700, 1200, 1700, 2200], rpm => rpm / 8)],
    ['a narrow sweep', sweep([700, 720, 740, 760, 780], rpm => rpm / 8)],
    ['none', []],
  ])('claims nothing from %s', (_, points) => {
    expect(stateOf(points)).toBe('tooLittleData');
  });

  test('names the point at fault', () => {
    expect(judgeSweep([{ speedRpm: 700, pressureKpa: Number.NaN }])).toMatchObject({
      issue: { code: 'notANumber', input: 'point 1 pressureKpa' },
    });
  });
});
