import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { bandCount, createCentring, createLogMel } from '../../../src/voice/phone-network/log-mel.ts';
import { tone } from '../../helpers/tones.ts';

/** Where the middle of a band lies, by the mel scale of O'Shaughnessy (Speech Communication, 1987, from memory). */
const middleHz = (band: number) => {
  const mel = (hz: number) => 2595 * Math.log10(1 + hz / 700);
  return 700 * (10 ** ((mel(60) + ((mel(7_800) - mel(60)) * (band + 1)) / 65) / 2595) - 1);
};

describe('the mel bands', () => {
  it('are loudest where the tone is', () => {
    for (const band of [8, 16, 27, 40, 53, 61]) {
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

  it('are set against their means: what does not change comes to nothing, and what is new stands out', () => {
    const centre = createCentring();
    const steady = new Float32Array(bandCount).fill(-3);
    for (let i = 0; i < 500; i++) {
      const row = centre(steady);
      for (let band = 0; band < bandCount; band++) {
        expect(row[band]).toBeCloseTo(0, 5);
        // The mean itself, brought to about -1 to 1.
        expect(row[bandCount + band]).toBeCloseTo((-3 + 5) / 2, 5);
      }
    }
    expect(centre(new Float32Array(bandCount).fill(0))[7]).toBeCloseTo(3 * (299 / 300), 4);
  });

  it('forget after three seconds', () => {
    const centre = createCentring();
    for (let i = 0; i < 200; i++) centre(new Float32Array(bandCount).fill(4));
    for (let i = 0; i < 299; i++) centre(new Float32Array(bandCount));
    const row = centre(new Float32Array(bandCount));
    expect(row[0]).toBeCloseTo(0, 6);
    expect(row[bandCount]).toBeCloseTo(2.5, 6);
  });
});
