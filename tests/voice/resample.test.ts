import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { concatenate } from '../../src/voice/concatenate.ts';
import type { Pcm } from '../../src/voice/ports.ts';
import { createResampler, speechRateHz } from '../../src/voice/resample.ts';
import { noise } from '../helpers/noise.ts';
import { rms, tone } from '../helpers/tones.ts';

/** The sound at the rate of speech, handed over in blocks of the given lengths, the rest in one. */
async function resampled(
  { samples, sampleRateHz }: Pcm,
  lengths: readonly number[] = [],
): Promise<Float32Array> {
  const resampler = createResampler();
  const pieces: Float32Array[] = [];
  let at = 0;
  for (const length of [...lengths, samples.length]) {
    pieces.push(await resampler.next({ samples: samples.subarray(at, at + length), sampleRateHz }));
    at += length;
  }
  resampler.close();
  return concatenate(pieces);
}

/** Compared here, since the matchers take seconds over long arrays. */
const same = (a: Float32Array, b: Float32Array) =>
  a.length === b.length && a.every((sample, i) => sample === b[i]);

/** Strength of one frequency, as the peak of its tone: the discrete Fourier transform at that frequency. */
function peakAt(frequencyHz: number, samples: Float32Array): number {
  let [real, imaginary] = [0, 0];
  samples.forEach((sample, i) => {
    const angle = (2 * Math.PI * frequencyHz * i) / speechRateHz;
    real += sample * Math.cos(angle);
    imaginary += sample * Math.sin(angle);
  });
  return (2 * Math.hypot(real, imaginary)) / samples.length;
}

const anyRate = fc.oneof(
  fc.constantFrom(8_000, 11_025, 16_000, 22_050, 32_000, 44_100, 48_000, 96_000, 192_000),
  fc.integer({ min: 8_000, max: 192_000 }),
);

describe('sound of any rate, for the recognizers', () => {
  it('is the same in blocks of any length as in one piece', async () => {
    await fc.assert(
      fc.asyncProperty(
        anyRate,
        fc.array(fc.integer({ min: 0, max: 5_000 }), { maxLength: 12 }),
        async (sampleRateHz, lengths) => {
          const next = noise(sampleRateHz);
          const sound = { samples: Float32Array.from({ length: 20_000 }, () => 0.1 * next()), sampleRateHz };
          expect(same(await resampled(sound, lengths), await resampled(sound))).toBe(true);
        },
      ),
      { numRuns: 25 },
    );
  });

  it('is the same in one long view into a longer recording', async () => {
    const sound = tone(7, { sampleRateHz: 192_000 });
    const inBlocks = await resampled(
      sound,
      Array.from({ length: 70 }, () => 19_200),
    );
    const longer = concatenate([new Float32Array(1000).fill(1), sound.samples]);
    expect(same(await resampled({ ...sound, samples: longer.subarray(1000) }), inBlocks)).toBe(true);
  });

  it('lasts as long as before, but for a filter tail of less than 6 ms', async () => {
    await fc.assert(
      fc.asyncProperty(anyRate, async sampleRateHz => {
        const { length } = await resampled(tone(0.5, { sampleRateHz }));
        expect(length).toBeLessThanOrEqual(0.5 * speechRateHz);
        expect(length).toBeGreaterThan(0.494 * speechRateHz);
      }),
      { numRuns: 20 },
    );
  });

  it('keeps a tone at its frequency and strength', async () => {
    await fc.assert(
      fc.asyncProperty(anyRate, fc.integer({ min: 2, max: 25 }), async (sampleRateHz, hundreds) => {
        const frequencyHz = 100 * hundreds;
        const out = await resampled(tone(0.5, { sampleRateHz, frequencyHz, peak: 0.5 }));
        // A tenth of a second from the middle: whole periods of every such tone.
        const middle = out.slice(3_200, 4_800);
        expect(peakAt(frequencyHz, middle)).toBeCloseTo(0.5, 2);
        expect(rms({ samples: middle, sampleRateHz })).toBeCloseTo(0.5 / Math.SQRT2, 2);
      }),
      { numRuns: 20 },
    );
  });

  it('loses what is too high for its rate instead of folding it into the voice', async () => {
    const out = await resampled(tone(0.5, { sampleRateHz: 48_000, frequencyHz: 15_000, peak: 0.5 }));
    expect(rms({ samples: out.slice(1_600), sampleRateHz: speechRateHz })).toBeLessThan(0.001);
  });

  it('at 16 kHz passes unchanged', async () => {
    const sound = tone(0.1);
    expect(await resampled(sound)).toEqual(sound.samples);
  });

  it('may change its rate on the way', async () => {
    const resampler = createResampler();
    for (const sampleRateHz of [48_000, 16_000, 8_000, 44_100]) {
      const out = await resampler.next(tone(0.5, { sampleRateHz }));
      expect(rms({ samples: out.slice(1_000), sampleRateHz: speechRateHz })).toBeCloseTo(0.5 / Math.SQRT2, 2);
    }
  });

  it.each([0, -16_000, 3_999, 192_001, Number.NaN, Number.POSITIVE_INFINITY])(
    'is refused at %d samples a second',
    async sampleRateHz => {
      await expect(
        createResampler().next({ samples: new Float32Array(10), sampleRateHz }),
      ).rejects.toMatchObject({
        name: 'VoiceError',
        code: 'soundUnusable',
        message: `Sound at ${sampleRateHz} samples a second cannot be used; set the source to 4000 to 192000.`,
      });
    },
  );
});
