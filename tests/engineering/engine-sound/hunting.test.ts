import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { huntingIn } from '../../../src/engineering/engine-sound/hunting.ts';

const speeds = (rpmAt: (s: number) => number, seconds = 14) =>
  Array.from({ length: Math.round(seconds / 0.14) }, (_, i) => ({
    atS: 100 + i * 0.14,
    rpm: rpmAt(i * 0.14),
  }));

describe('an idle that hunts', () => {
  it('is told with its amplitude and period', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 2, max: 6.5, noNaN: true }),
        fc.double({ min: 15, max: 80, noNaN: true }),
        fc.double({ min: 0, max: 6, noNaN: true }),
        (periodS, amplitudeRpm, phase) => {
          const hunting = huntingIn(
            speeds(
              s => 700 + amplitudeRpm * Math.sin((2 * Math.PI * s) / periodS + phase) + 3 * Math.sin(40 * s),
            ),
          );
          expect(hunting?.periodS).toBeGreaterThan(periodS * 0.93);
          expect(hunting?.periodS).toBeLessThan(periodS * 1.07);
          expect(hunting?.amplitudeRpm).toBeGreaterThan(amplitudeRpm * 0.8);
          expect(hunting?.amplitudeRpm).toBeLessThan(amplitudeRpm * 1.25);
        },
      ),
      { numRuns: 40 },
    );
  });

  it('is not made of a steady idle, of a sweep, nor of too few speeds', () => {
    expect(huntingIn(speeds(s => 700 + 4 * Math.sin(1.9 * s)))).toBeNull();
    expect(huntingIn(speeds(s => 700 + 60 * s))).toBeNull();
    expect(huntingIn(speeds(s => 700 + 40 * Math.sin(2 * s), 2))).toBeNull();
    expect(huntingIn([])).toBeNull();
  });
});
