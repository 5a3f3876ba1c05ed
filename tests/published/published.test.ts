import { describe, expect, test } from 'vitest';
import { publishedChecks } from './checks/index.ts';

describe('our figures agree with published ones', () => {
  test.each(publishedChecks)(
    '$subject: $quantity is $expected $unit, by $source',
    ({ compute, expected, tolerance }) => {
      const got = compute();
      expect(got).toBeGreaterThanOrEqual(expected - tolerance);
      expect(got).toBeLessThanOrEqual(expected + tolerance);
    },
  );

  test('every check names its source, and none is listed twice', () => {
    const names = publishedChecks.map(({ subject, quantity, source }) => `${subject}|${quantity}|${source}`);
    expect(new Set(names).size).toBe(names.length);
    expect(publishedChecks.filter(({ source }) => source.trim() === '')).toEqual([]);
  });

  test('no tolerance is so wide that zero or twice the figure would pass', () => {
    const loose = publishedChecks.filter(
      ({ expected, tolerance }) => expected !== 0 && tolerance >= Math.abs(expected),
    );
    expect(loose).toEqual([]);
  });
});
