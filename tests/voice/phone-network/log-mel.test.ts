import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { createCentring, createLogMel } from '../../../src/voice/phone-network/log-mel.ts';
import { tone } from '../../helpers/tones.ts';

/** Where the middle of a band lies, by the mel scale of O'Shaughnessy (Speech Communication, 1987, from memory). */
const middleHz = (band: number) => {
  const mel = (hz: number) => 2595 * Math.log10(1 + hz / 700);
  return 700 * (10 ** ((mel(80) + ((mel(7_600) - mel(80)) * (band + 1)) / 41) / 2595) - 1);
};

describe('the mel bands', () => {
  it('are loudest where the tone is', () => {
    for (const band of [4, 10, 17, 25, 33, 38]) {
      const rows = createLogMel()(tone(0.2, { frequencyHz: middleHz(band), peak: 0.3 }).samples);
      const row = rows[10] ?? new Float32Array();
      expect(row.indexOf(Math.max(...row)), `${middleHz(band)} Hz`).toBe(band);
    }
  });

  it('come each 10 ms, alike in pieces of any length', () => {
    const { samples } = tone(0.3, { frequencyHz: 700 });
    const whole = createLogMel()(samples);
    expect(whole).toHaveLength(Math.floor((samples.length - 400) / 160) + 1);
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 2_000 }), length => {
        const logMel = createLogMel();
        const rows: Float32Array[] = [];
        for (let at = 0; at < samples.length; at += length)
          rows.push(...logMel(samples.subarray(at, at + length)));
        expect(rows).toEqual(whole);
      }),
      { numRuns: 20 },
    );
  });

  it('of silence are the least they can be, and no infinity', () => {
    const [row] = createLogMel()(new Float32Array(600));
    expect([...(row ?? [])].every(value => Math.abs(value + 9) < 1e-6)).toBe(true);
  });

  it('are centred: what does not change comes to nothing, and what is new stands out', () => {
    const centre = createCentring();
    const steady = Float32Array.of(3, -5);
    const first = Array.from({ length: 10 }, () => centre(steady));
    expect(first.map(rows => rows.length)).toEqual([0, 0, 0, 0, 0, 0, 0, 0, 0, 10]);
    for (const row of first.flat()) for (const value of row) expect(value).toBeCloseTo(0, 5);
    const [louder] = centre(Float32Array.of(4, -5));
    expect(louder?.[0]).toBeCloseTo(0.99, 5);
    expect(louder?.[1]).toBeCloseTo(0, 5);
  });
});
