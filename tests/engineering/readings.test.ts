import { describe, expect, test } from 'vitest';
import { refuseReadings, spanS } from '../../src/engineering/readings.ts';
import { withoutSpikes } from '../../src/engineering/spikes.ts';

const RANGE = { min: -60, max: 150, unit: 'degC' };
const series = (...values: readonly number[]) => values.map((value, i) => ({ timeS: i * 10, value }));

describe('readings', () => {
  test('in order and in range may be calculated with, two at one moment too', () => {
    expect(refuseReadings('coolantC', [...series(20, 21), { timeS: 10, value: 22 }], RANGE)).toBeUndefined();
    expect(refuseReadings('coolantC', [], RANGE)).toBeUndefined();
  });

  test.each([
    [[{ timeS: 0, value: Number.NaN }], 'notANumber', 'coolantC 1'],
    [
      [
        { timeS: 0, value: 20 },
        { timeS: 10, value: 151 },
      ],
      'outOfRange',
      'coolantC 2',
    ],
    [[{ timeS: Number.POSITIVE_INFINITY, value: 20 }], 'notANumber', 'coolantC 1 timeS'],
    [
      [
        { timeS: 10, value: 20 },
        { timeS: 9, value: 20 },
      ],
      'contradictory',
      'coolantC 2 timeS',
    ],
  ])('the reading at fault is named (case %#)', (readings, code, input) => {
    expect(refuseReadings('coolantC', readings, RANGE)?.issue).toMatchObject({ code, input });
  });

  test('span from the first to the last', () => {
    expect(spanS(series(1, 2, 3))).toBe(20);
    expect(spanS([])).toBe(0);
  });
});

describe('single readings that jump away and back', () => {
  test('a misheard fifty for fifteen is set aside', () => {
    expect(withoutSpikes(series(14, 14, 15, 50, 16, 17, 18), 5)).toEqual(
      series(14, 14, 15, 50, 16, 17, 18).filter(({ value }) => value !== 50),
    );
  });

  test('what lasts for two readings stays: it may be real', () => {
    const lasting = series(14, 14, 15, 50, 50, 17, 18, 18);
    expect(withoutSpikes(lasting, 5)).toEqual(lasting);
  });

  test('the last reading stays, however odd: the next one will tell', () => {
    const odd = series(14, 14, 15, 15, 16, 17, 60);
    expect(withoutSpikes(odd, 5)).toEqual(odd);
  });

  test('in noisy readings an ordinary jump is no spike', () => {
    const noisy = series(20, 28, 21, 30, 22, 29, 23, 31, 24);
    expect(withoutSpikes(noisy, 5)).toEqual(noisy);
  });
});
