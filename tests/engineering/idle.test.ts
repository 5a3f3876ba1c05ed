import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { judgeIdle } from '../../src/engineering/idle.ts';
import type { Reading } from '../../src/engineering/readings.ts';

const SPEC = { minRpm: 650, maxRpm: 750, maxScatterRpm: 10, maxDriftRpm: 30, windowS: 20 };

const every = (stepS: number, spanS: number, speedRpm: (timeS: number) => number): Reading[] =>
  Array.from({ length: Math.floor(spanS / stepS) + 1 }, (_, i) => ({
    timeS: i * stepS,
    value: speedRpm(i * stepS),
  }));

const stateOf = (readings: readonly Reading[]) => {
  const result = judgeIdle(readings, SPEC);
  return result.ok ? result.value.state : result.issue.code;
};

describe('idle', () => {
  test.each([
    ['inRangeSteady', () => 700],
    ['inRangeSteady', (t: number) => 700 + 3 * Math.sin(t)],
    ['outOfRange', () => 600],
    ['outOfRange', () => 800],
    ['hunting', (t: number) => 700 + 30 * Math.sin(t)],
    ['falling', (t: number) => 730 - 2 * t],
    ['rising', (t: number) => 660 + 2 * t],
  ])('is %s (case %#)', (state, speed) => {
    expect(stateOf(every(1, 20, speed))).toBe(state);
  });

  test('an engine that dies at the end is out of range, whatever its mean', () => {
    expect(stateOf(every(1, 20, t => (t < 20 ? 700 : 0)))).toBe('outOfRange');
  });

  test('only the window up to the last reading counts', () => {
    expect(stateOf(every(1, 60, t => (t < 30 ? 1500 : 700)))).toBe('inRangeSteady');
  });

  test.each([
    ['four readings', every(5, 15, () => 700)],
    ['half the window', every(1, 10, () => 700)],
    ['a gap of more than half the window', [0, 1, 2, 3, 15, 20].map(timeS => ({ timeS, value: 700 }))],
    ['none', []],
  ])('nothing is judged from %s', (_, readings) => {
    expect(stateOf(readings)).toBe('tooLittleData');
  });

  test('every limit comes with its margin', () => {
    const result = judgeIdle(
      every(1, 20, () => 745),
      SPEC,
    );
    expect(result.ok && result.value.verdicts.map(({ met, margin }) => [met, Math.round(margin)])).toEqual([
      [true, 5],
      [true, 5],
      [true, 10],
      [true, 30],
    ]);
  });

  test('the same speed later on the clock is judged the same', () => {
    fc.assert(
      fc.property(
        fc.array(fc.integer({ min: 500, max: 900 }), { minLength: 21, maxLength: 21 }),
        fc.integer({ min: 0, max: 1_000_000 }),
        (speeds, laterS) => {
          const readings = speeds.map((value, timeS) => ({ timeS, value }));
          expect(stateOf(readings.map(({ timeS, value }) => ({ timeS: timeS + laterS, value })))).toBe(
            stateOf(readings),
          );
        },
      ),
    );
  });

  test('is never steady when any of its limits is broken', () => {
    fc.assert(
      fc.property(fc.array(fc.integer({ min: 640, max: 760 }), { minLength: 21, maxLength: 21 }), speeds => {
        const result = judgeIdle(
          speeds.map((value, timeS) => ({ timeS, value })),
          SPEC,
        );
        expect(
          result.ok && (result.value.state === 'inRangeSteady') === result.value.verdicts.every(v => v.met),
        ).toBe(true);
      }),
    );
  });

  test('names what is wrong with its inputs', () => {
    expect(judgeIdle([], { ...SPEC, minRpm: 800 })).toMatchObject({
      issue: { code: 'contradictory', input: 'maxRpm' },
    });
    expect(judgeIdle([], { ...SPEC, windowS: Number.NaN })).toMatchObject({
      issue: { code: 'notANumber', input: 'windowS' },
    });
    expect(judgeIdle([{ timeS: 0, value: -1 }], SPEC)).toMatchObject({
      issue: { code: 'outOfRange', input: 'speedRpm 1' },
    });
  });
});
