import { describe, expect, it } from 'vitest';
import { Biquads, highPass, lowPass } from '../../../src/engineering/engine-sound/filters.ts';

const RATE_HZ = 8_000;

/** By how much a tone comes out larger than it went in, once it goes on as it is. */
function gain(filter: Biquads, hz: number): number {
  const periods = 4;
  const long = Math.round((periods * RATE_HZ) / hz);
  let [cosine, sine] = [0, 0];
  for (let i = 0; i < RATE_HZ + long; i++) {
    const y = filter.next(Math.sin((2 * Math.PI * hz * i) / RATE_HZ));
    if (i < RATE_HZ) continue;
    cosine += (2 / long) * y * Math.cos((2 * Math.PI * hz * i) / RATE_HZ);
    sine += (2 / long) * y * Math.sin((2 * Math.PI * hz * i) / RATE_HZ);
  }
  return Math.hypot(cosine, sine);
}

/** What goes round the corner as a second-order low-pass does it, after the bilinear transform (closed form). */
function lowGain(hz: number, cornerHz: number, q: number): number {
  const ratio = Math.tan((Math.PI * hz) / RATE_HZ) / Math.tan((Math.PI * cornerHz) / RATE_HZ);
  return 1 / Math.hypot(1 - ratio ** 2, ratio / q);
}
function highGain(hz: number, cornerHz: number, q: number): number {
  const ratio = Math.tan((Math.PI * hz) / RATE_HZ) / Math.tan((Math.PI * cornerHz) / RATE_HZ);
  return ratio ** 2 / Math.hypot(1 - ratio ** 2, ratio / q);
}

describe('a second-order section', () => {
  it('has the coefficients that tables give for a Butterworth low-pass at a quarter of the rate', () => {
    // 0.2929, 0.5858, 0.2929 over 1, 0, 0.1716: second-order Butterworth, half the Nyquist frequency; from memory.
    expect(lowPass(RATE_HZ / 4, RATE_HZ)).toEqual(
      [0.2929, 0.5858, 0.2929, 0, 0.1716].map(b => expect.closeTo(b, 4)),
    );
    expect(highPass(RATE_HZ / 4, RATE_HZ)).toEqual(
      [0.2929, -0.5858, 0.2929, 0, 0.1716].map(b => expect.closeTo(b, 4)),
    );
  });

  it('lets at its corner as much through as its quality says: 0.707, or -3 dB, where none is given', () => {
    for (const hz of [80, 500, 2_000]) {
      expect(gain(new Biquads([lowPass(hz, RATE_HZ)]), hz)).toBeCloseTo(Math.SQRT1_2, 6);
      expect(gain(new Biquads([highPass(hz, RATE_HZ)]), hz)).toBeCloseTo(Math.SQRT1_2, 6);
      for (const q of [0.54, 1.31]) {
        expect(gain(new Biquads([lowPass(hz, RATE_HZ, q)]), hz)).toBeCloseTo(q, 6);
        expect(gain(new Biquads([highPass(hz, RATE_HZ, q)]), hz)).toBeCloseTo(q, 6);
      }
    }
  });

  it('lets through below its corner, or above it, and away from it less with each octave', () => {
    for (const hz of [100, 250, 1_000, 1_600]) {
      expect(gain(new Biquads([lowPass(400, RATE_HZ)]), hz)).toBeCloseTo(lowGain(hz, 400, Math.SQRT1_2), 6);
      expect(gain(new Biquads([highPass(400, RATE_HZ)]), hz)).toBeCloseTo(highGain(hz, 400, Math.SQRT1_2), 6);
    }
  });
});

describe('sections in a row', () => {
  it('let through what each of them lets through of what the one before has left', () => {
    const both = new Biquads([lowPass(500, RATE_HZ, 0.54), highPass(200, RATE_HZ, 1.31)]);
    expect(gain(both, 250)).toBeCloseTo(lowGain(250, 500, 0.54) * highGain(250, 200, 1.31), 6);
  });

  it('of 0.54 and 1.31 make a fourth-order Butterworth: -3 dB at their corner', () => {
    // 0.5412 and 1.3066: the qualities of its two sections, from memory.
    const both = new Biquads([lowPass(430, RATE_HZ, 0.54), lowPass(430, RATE_HZ, 1.31)]);
    expect(gain(both, 430)).toBeCloseTo(Math.SQRT1_2, 2);
  });

  it('leave a sample as it is where there are none', () => {
    expect(new Biquads([]).next(0.3)).toBe(0.3);
  });
});
