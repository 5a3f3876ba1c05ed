import { execFileSync } from 'node:child_process';
import { readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, it } from 'vitest';
import { decodeWav } from '../../src/voice/audio/wav.ts';
import { encodeWav } from '../../src/voice/audio/wav-encode.ts';
import { scratchFolder } from '../helpers/scratch.ts';
import { rms, tone } from '../helpers/tones.ts';

// Outside check: the files are written, and ours are read, by SoX 14.4.2 (Debian package `sox`).
const layouts: [bits: number, encoding: string, channels: number][] = [
  [8, 'unsigned-integer', 1],
  [16, 'signed-integer', 2],
  [24, 'signed-integer', 1],
  [24, 'signed-integer', 2],
  [32, 'signed-integer', 1],
  [32, 'floating-point', 2],
];

for (const [bits, encoding, channels] of layouts) {
  for (const rateHz of [8_000, 44_100, 192_000]) {
    it(`SoX's ${bits} bit ${encoding} file with ${channels} channel(s) at ${rateHz} Hz is read right`, () => {
      const file = join(scratchFolder(), 'tone.wav');
      const layout = ['-b', `${bits}`, '-e', encoding, '-c', `${channels}`];
      execFileSync('sox', [
        '-D',
        '-r',
        `${rateHz}`,
        '-n',
        ...layout,
        file,
        'synth',
        '0.5',
        'sine',
        '500',
        'vol',
        '0.5',
      ]);
      const sound = decodeWav(readFileSync(file), file);
      expect(sound.sampleRateHz).toBe(rateHz);
      expect(sound.samples.length).toBe(rateHz / 2);
      // A sine with a peak of 0.5 has an RMS of 0.5 / sqrt 2.
      expect(rms(sound)).toBeCloseTo(0.5 / Math.SQRT2, 2);
      const expected = tone(0.5, { frequencyHz: 500, sampleRateHz: rateHz });
      const off = sound.samples.map((sample, i) => Math.abs(sample - (expected.samples[i] ?? Number.NaN)));
      expect(Math.max(...off)).toBeLessThan(0.01);
    });
  }
}

it('SoX reads our files: rate, length and level agree', () => {
  const file = join(scratchFolder(), 'ours.wav');
  writeFileSync(file, encodeWav(tone(0.25, { peak: 0.8 })));
  const about = execFileSync('soxi', [file], { encoding: 'utf8' });
  expect(about).toMatch(/Sample Rate\s*: 16000/);
  expect(about).toMatch(/= 4000 samples/);
  expect(about).toMatch(/16-bit Signed Integer PCM/);
});

it('two opposite channels cancel each other in the mix', () => {
  const file = join(scratchFolder(), 'opposite.wav');
  const synth = ['synth', '0.1', 'sine', '500', 'vol', '0.5', 'remix', '1', '1i'];
  execFileSync('sox', ['-D', '-r', '16000', '-n', '-b', '16', file, ...synth]);
  expect(Math.max(...decodeWav(readFileSync(file), file).samples.map(Math.abs))).toBeLessThan(1e-4);
});
