import { execFileSync } from 'node:child_process';
import { writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it, onTestFinished } from 'vitest';
import { nearSilence } from '../../audio-fixtures/near-silence.ts';
import { SynthesisError, synthesize } from '../../audio-fixtures/synthesize.ts';
import { VOICES } from '../../audio-fixtures/voices.ts';
import { encodeWav } from '../../src/voice/audio/wav-encode.ts';
import { scratchFolder } from '../helpers/scratch.ts';
import { rms } from '../helpers/tones.ts';

describe.each(VOICES.map(({ name }) => name))('test speech in the voice %s', name => {
  const sound = synthesize(name, 'oil pressure forty five');

  it('lasts as long as the words take, and a second of near-silence', () => {
    expect(sound.sampleRateHz).toBe(16_000);
    expect(sound.samples.length / 16_000).toBeGreaterThan(2);
    expect(sound.samples.length / 16_000).toBeLessThan(4);
  });

  it('is near-silent for half a second at each end, and never digital silence', () => {
    for (const part of [sound.samples.slice(0, 8_000), sound.samples.slice(-8_000)]) {
      expect(Math.max(...part.map(Math.abs))).toBeLessThanOrEqual(3 / 32_768);
      expect(part.filter(sample => sample !== 0).length).toBeGreaterThan(4_000);
    }
  });

  it('is loud in between without clipping', () => {
    const speech = { samples: sound.samples.slice(8_000, -8_000), sampleRateHz: 16_000 };
    expect(rms(speech)).toBeGreaterThan(0.02);
    expect(Math.max(...speech.samples.map(Math.abs))).toBeLessThan(1);
  });

  it('as SoX measures it, holds that level and length too', () => {
    const file = join(scratchFolder(), 'speech.wav');
    writeFileSync(file, encodeWav(sound));
    const seconds = Number(execFileSync('soxi', ['-D', file], { encoding: 'utf8' }));
    expect(seconds).toBeCloseTo(sound.samples.length / 16_000, 3);
  });
});

describe('test speech', () => {
  it('of a voice that is unknown is refused, and the known ones are named', () => {
    expect(() => synthesize('nobody', 'yes')).toThrow(
      /no voice "nobody"; take one of flite-slt, .*espeak-en-us-female.*\.$/,
    );
  });

  it('without its program names the Debian package to install', () => {
    const path = process.env.PATH;
    process.env.PATH = '/no/such/folder';
    onTestFinished(() => {
      process.env.PATH = path;
    });
    const text = `never said before ${Date.now()}`;
    expect(() => synthesize('festival-slt-hts', text)).toThrow(SynthesisError);
    expect(() => synthesize('festival-slt-hts', text)).toThrow(
      /^text2wave made no speech \(.*ENOENT\); install the Debian packages festival and festvox-us-slt-hts\.$/,
    );
  });
});

describe('near-silence', () => {
  it('is the same for the same seed and another for another', () => {
    expect(nearSilence(100, 7)).toEqual(nearSilence(100, 7));
    expect(nearSilence(100, 7)).not.toEqual(nearSilence(100, 8));
  });

  it('is spread evenly about zero', () => {
    const noise = nearSilence(100_000, 1);
    const mean = noise.reduce((sum, sample) => sum + sample, 0) / noise.length;
    expect(Math.abs(mean)).toBeLessThan(0.02 / 32_768);
    // A triangle of half-width 3 steps has a standard deviation of 3 / sqrt 6 steps.
    expect(rms({ samples: noise, sampleRateHz: 16_000 }) * 32_768).toBeCloseTo(3 / Math.sqrt(6), 1);
  });
});
