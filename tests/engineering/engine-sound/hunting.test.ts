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

  /** A swing about the middle of what is seen, which has no trend. */
  const swing = (periodS: number, amplitudeRpm: number, seconds = 14) =>
    speeds(s => 700 + amplitudeRpm * Math.cos((2 * Math.PI * (s - seconds / 2 + 0.07)) / periodS), seconds);
  /** One of the periods that are tried. */
  const TRIED_S = 1.2 * 1.03 ** 30;

  it('is told through a rise that it rides on', () => {
    for (const rise of [8, -8, 30])
      for (const phase of [0, 1, 2, 3]) {
        const hunting = huntingIn(
          speeds(s => 900 + rise * s + 30 * Math.sin((2 * Math.PI * s) / TRIED_S + phase)),
        );
        expect(hunting?.periodS).toBeCloseTo(TRIED_S, 0);
        expect(hunting?.amplitudeRpm).toBeGreaterThan(27);
        expect(hunting?.amplitudeRpm).toBeLessThan(33);
      }
  });

  it('has the amplitude and the period of the swing exactly, where the period is one of those that are tried', () => {
    const hunting = huntingIn(swing(TRIED_S, 30, 4 * TRIED_S));
    expect(hunting?.periodS).toBeCloseTo(TRIED_S, 9);
    expect(hunting?.amplitudeRpm).toBeCloseTo(30, 0);
  });

  it('swings by at least 1.2 % of its mean', () => {
    expect(huntingIn(swing(TRIED_S, 8.2, 4 * TRIED_S))).toBeNull();
    expect(huntingIn(swing(TRIED_S, 8.6, 4 * TRIED_S))?.amplitudeRpm).toBeCloseTo(8.6, 1);
  });

  it('has one swing that explains six tenths of how it varies', () => {
    // The other is quicker than any that is tried; of the sum of both the squares of the amplitudes are the shares.
    const both = (other: number) =>
      speeds(
        s =>
          700 +
          30 * Math.cos((2 * Math.PI * s) / TRIED_S) +
          30 * Math.sqrt(other) * Math.cos((2 * Math.PI * s) / 0.5),
        5 * TRIED_S,
      );
    expect(huntingIn(both(1 / 0.63 - 1))?.periodS).toBeCloseTo(TRIED_S, 1);
    expect(huntingIn(both(1 / 0.57 - 1))).toBeNull();
  });

  it('is seen for 1.8 periods, and none is told that is longer than 9 s', () => {
    expect(huntingIn(swing(7.5, 40))?.periodS).toBeCloseTo(7.5, 0);
    expect(huntingIn(swing(9.5, 40))?.periodS ?? 0).toBeLessThan(14 / 1.8);
    expect(huntingIn(swing(8.7, 40, 30))?.periodS).toBeCloseTo(8.7, 0);
    expect(huntingIn(swing(10.5, 40, 30))?.periodS ?? 0).toBeLessThan(9);
  });

  it('may have the shortest period that is tried, 1.2 s, where 1.8 of it were seen', () => {
    const seen = (count: number, seconds: number) =>
      Array.from({ length: count }, (_, i) => {
        const atS = (seconds * i) / (count - 1);
        return { atS, rpm: 700 + 40 * Math.sin((2 * Math.PI * atS) / 1.2) };
      });
    expect(huntingIn(seen(24, 2.16))?.periodS).toBe(1.2);
    expect(huntingIn(seen(24, 2.15))).toBeNull();
    expect(huntingIn(seen(23, 2.16))).toBeNull();
  });

  it('is told all the same where only two quarters of each swing are heard', () => {
    for (const quarter of [0, 0.25])
      for (const phase of [0, 0.8, 1.6, 2.4]) {
        const heard = Array.from({ length: 160 }, (_, i) => i / 40)
          .filter(swings => (swings + quarter) % 0.5 < 0.25)
          .map(swings => ({
            atS: swings * TRIED_S,
            rpm: 700 + 40 * Math.sin(2 * Math.PI * swings + phase),
          }));
        const hunting = huntingIn(heard);
        expect(hunting?.periodS).toBeCloseTo(TRIED_S, 6);
        expect(hunting?.amplitudeRpm).toBeGreaterThan(38);
        expect(hunting?.amplitudeRpm).toBeLessThan(40.1);
      }
  });

  it('is not told of a speed that is the same each time', () => {
    expect(huntingIn(speeds(() => 700))).toBeNull();
  });

  it('is not made up where speeds are so far apart that a period cannot be told from none', () => {
    // Each second speed falls onto the same place of a swing of 1.2 s: there is only ever its cosine.
    const apart = (rpmAt: (i: number) => number) =>
      Array.from({ length: 24 }, (_, i) => ({ atS: 0.6 * i, rpm: rpmAt(i) }));
    for (const rpmAt of [(i: number) => 700 + (i % 3), (i: number) => 700 + 3 * (i % 2)])
      expect(huntingIn(apart(rpmAt))).toBeNull();
    expect(huntingIn(apart(i => 700 + 40 * Math.sin((2 * Math.PI * 0.6 * i) / 5)))?.periodS).toBeCloseTo(
      5,
      0,
    );
  });
});
