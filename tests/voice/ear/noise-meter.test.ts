import { describe, expect, it } from 'vitest';
import { normal } from '../../../audio-fixtures/random.ts';
import { NoiseMeter } from '../../../src/voice/ear/noise-meter.ts';

const rateHz = 16_000;
const piece = 320;

/** Feeds a meter noise of one level with a louder stretch in it. */
function measured({ noiseDb, speechDb }: { noiseDb: number; speechDb: number }): NoiseMeter {
  const meter = new NoiseMeter(rateHz);
  const gauss = normal(1);
  const feed = (ms: number, levelDb: number, speech: boolean) => {
    for (let at = 0; at < ms; at += 20) {
      const gain = 10 ** (levelDb / 20);
      meter.next(
        Float32Array.from({ length: piece }, () => gain * gauss()),
        speech,
      );
    }
  };
  feed(2_000, noiseDb, false);
  feed(800, speechDb, true);
  feed(200, noiseDb, true);
  feed(500, noiseDb, false);
  return meter;
}

describe('the noise meter', () => {
  it.each([
    { noiseDb: -50, speechDb: -25 },
    { noiseDb: -35, speechDb: -25 },
    { noiseDb: -60, speechDb: -20 },
  ])('measures noise at $noiseDb dBFS and speech at $speechDb within 2 dB', ({ noiseDb, speechDb }) => {
    const meter = measured({ noiseDb, speechDb });
    expect(Math.abs((meter.noiseDbfs ?? 0) - noiseDb)).toBeLessThan(2);
    expect(Math.abs((meter.utterance?.speechDbfs ?? 0) - speechDb)).toBeLessThan(2);
    expect(Math.abs((meter.utterance?.aboveNoiseDb ?? 0) - (speechDb - noiseDb))).toBeLessThan(2);
  });

  it('says nothing before there was enough to measure', () => {
    const meter = new NoiseMeter(rateHz);
    meter.next(new Float32Array(piece), false);
    expect(meter.noiseDbfs).toBeUndefined();
    expect(meter.utterance).toBeUndefined();
  });

  it('finds a voice that is no louder than the noise not above it', () => {
    expect(measured({ noiseDb: -30, speechDb: -30 }).utterance?.aboveNoiseDb).toBeLessThan(0);
  });
});
