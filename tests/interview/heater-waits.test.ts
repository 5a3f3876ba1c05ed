import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { longestWait, STATED_AT_C, waitsFor } from '../../src/interview/heater-waits.ts';

describe('the waits of a heater', () => {
  it('are the usual table where they are stated at -20 °C', () => {
    expect(waitsFor(20, STATED_AT_C).map(({ atC, waitS }) => [atC, waitS])).toEqual([
      [-45, 34],
      [-30, 26],
      [-20, 20],
      [-10, 14],
      [5, 6],
      [20, 0],
      [60, 0],
    ]);
  });

  it('hold what the manual says where it says it, rise with the cold, and end at warm air', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 1, max: 150, noNaN: true }),
        fc.integer({ min: -40, max: 0 }),
        (waitS, atC) => {
          const rows = waitsFor(waitS, atC);
          expect(rows).toContainEqual({ atC, waitS });
          rows.slice(1).forEach((row, index) => {
            expect(row.atC).toBeGreaterThan(rows[index]?.atC ?? Number.NaN);
            expect(row.waitS).toBeLessThanOrEqual(rows[index]?.waitS ?? Number.NaN);
          });
          expect(rows.at(-1)).toEqual({ atC: 60, waitS: 0 });
          expect(longestWait(waitS, atC)).toBe(rows[0]?.waitS);
        },
      ),
    );
  });
});
