import { describe, expect, it } from 'vitest';
import { synthesize } from '../../../audio-fixtures/synthesize.ts';
import { idleNoise } from '../../../bench/hearing/engine-noise.ts';
import { added, levelled, meanPower, noiseAtSnr, speechPower } from '../../../bench/hearing/mix.ts';
import { createDenoisingFrontEnd } from '../../../src/voice/denoise/denoising-front-end.ts';
import { createThirder, createTripler } from '../../../src/voice/denoise/thirds.ts';
import { createPlainFrontEnd } from '../../../src/voice/front-end.ts';
import { joined, tone } from '../../helpers/tones.ts';

const rateHz = 16_000;

async function cleaned(samples: Float32Array, blockLength = 320): Promise<Float32Array> {
  const frontEnd = createDenoisingFrontEnd();
  const pieces: Float32Array[] = [];
  for (let at = 0; at < samples.length; at += blockLength) {
    const { raw, heard } = await frontEnd.next({
      samples: samples.subarray(at, at + blockLength),
      sampleRateHz: rateHz,
    });
    expect(heard).toHaveLength(raw.length);
    pieces.push(heard);
  }
  frontEnd.close();
  return joined(pieces.map(piece => ({ samples: piece, sampleRateHz: rateHz })));
}

describe('the denoising front end', () => {
  it('raises a voice beside an idling engine by 10 dB and more above the noise', async () => {
    const speech = levelled(synthesize('flite-slt', 'oil pressure forty two').samples);
    const lead = 2 * rateHz;
    const noise = noiseAtSnr(idleNoise(lead / rateHz + speech.length / rateHz, 2), 10);
    const clean = new Float32Array(noise.length);
    clean.set(speech, lead);
    const heard = await cleaned(added(clean, noise));
    // The second before the voice begins is noise alone, the network has had a second to get to know it.
    const noiseLeft = meanPower(heard.subarray(rateHz, lead));
    const above = 10 * Math.log10(speechPower(heard.subarray(lead)) / noiseLeft);
    expect(above).toBeGreaterThan(20);
  });

  it('leaves sound in a quiet room as it is, 11.5 ms late', async () => {
    const speech = levelled(synthesize('flite-slt', 'coolant full').samples);
    const heard = await cleaned(speech);
    expect(heard.subarray(184)).toEqual(speech.subarray(0, heard.length - 184));
  });

  it('cleans noise as late as it hands on quiet', async () => {
    const click = noiseAtSnr(idleNoise(1, 2), 30);
    const at = 12_000;
    for (let i = 0; i < 400; i++) click[at + i] = 0.5 * Math.sin((2 * Math.PI * 300 * i) / rateHz);
    const heard = await cleaned(click);
    const likeness = (lag: number) =>
      click.subarray(at, at + 400).reduce((sum, sample, i) => sum + sample * (heard[at + i + lag] ?? 0), 0);
    const lags = Array.from({ length: 60 }, (_, i) => 154 + i);
    const best = lags.reduce((best, lag) => (likeness(lag) > likeness(best) ? lag : best), 154);
    expect(Math.abs(best - 184)).toBeLessThanOrEqual(3);
  });

  it('hears the same whatever the length of the blocks', async () => {
    const speech = added(synthesize('flite-slt', 'stop').samples, noiseAtSnr(idleNoise(3, 2), 15));
    const [small, large] = [await cleaned(speech, 37), await cleaned(speech, 4_000)];
    expect(small).toEqual(large);
  });

  it('takes sound at other rates, and without denoising only brings it to 16 kHz', async () => {
    const second = tone(1, { sampleRateHz: 48_000 });
    for (const frontEnd of [createDenoisingFrontEnd(), createPlainFrontEnd()]) {
      const { heard } = await frontEnd.next(second);
      expect(heard.length).toBeGreaterThan(15_000);
      expect(heard.length).toBeLessThanOrEqual(16_000);
      frontEnd.close();
    }
  });
});

describe('three times the rate and back', () => {
  it.each([100, 1_000, 3_000, 6_000])('keeps a tone of %i Hz', frequencyHz => {
    const { samples } = tone(0.5, { frequencyHz });
    const back = createThirder()(createTripler()(samples));
    expect(back).toHaveLength(samples.length);
    expect(Math.abs(10 * Math.log10(meanPower(back.subarray(500)) / meanPower(samples)))).toBeLessThan(0.2);
  });
});
