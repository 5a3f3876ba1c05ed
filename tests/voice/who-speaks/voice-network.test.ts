import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { loadVoiceWeights } from '../../../src/voice/who-speaks/load-node.ts';
import { createVoiceNetwork, voiceLength } from '../../../src/voice/who-speaks/voice-network.ts';
import { noise } from '../../helpers/noise.ts';

const voiceIn = createVoiceNetwork(await loadVoiceWeights());
const nearness = (a: Float32Array, b: readonly number[] | Float32Array) =>
  a.reduce((sum, value, i) => sum + value * (b[i] ?? 0), 0);
/** The rising tone of `acoustic-model/export_voices.py`. */
const tone = Float32Array.from({ length: 16_000 }, (_, i) => {
  const s = i / 16_000;
  return 0.2 * Math.sin(2 * Math.PI * (200 * s + 900 * s * s));
});

describe('the network that tells voices apart', () => {
  it('computes what PyTorch computed with the same weights (acoustic-model/export_voices.py)', () => {
    const reference = JSON.parse(
      readFileSync(new URL('reference.json', import.meta.url), 'utf8'),
    ) as number[];
    const voice = voiceIn(tone);
    expect(voice).toHaveLength(voiceLength);
    expect(nearness(voice ?? new Float32Array(0), reference)).toBeGreaterThan(0.99);
  });

  it('gives a direction, however loud the sound was', () => {
    const [loud, soft] = [voiceIn(tone), voiceIn(tone.map(sample => sample / 30))];
    expect(Math.hypot(...(loud ?? []))).toBeCloseTo(1, 5);
    expect(nearness(loud ?? new Float32Array(0), soft ?? [])).toBeGreaterThan(0.97);
  });

  it('says nothing of what is too short to tell', () => {
    expect(voiceIn(tone.subarray(0, 3000))).toBeNull();
    expect(voiceIn(new Float32Array(0))).toBeNull();
  });

  it('is not upset by silence or noise', () => {
    const next = noise(1);
    const hiss = Float32Array.from({ length: 16_000 }, () => 0.05 * next());
    for (const sound of [new Float32Array(16_000), hiss])
      for (const value of voiceIn(sound) ?? [Number.NaN]) expect(value).not.toBeNaN();
  });

  it('refuses weights that are missing, in one sentence', async () => {
    await expect(loadVoiceWeights('/no/such/file')).rejects.toThrow(
      /cannot be read; install first-fire again/,
    );
  });
});
