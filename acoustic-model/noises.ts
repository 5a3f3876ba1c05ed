import { mkdirSync, writeFileSync } from 'node:fs';
import { type NoiseKind, noiseKinds, noiseOf } from '../bench/hearing/noises.ts';

/** Seeds of their own: neither the development nor the test set hears these loops. */
const firstSeed = 5_000;

const voices = ['flite-slt', 'flite-rms'];
const seconds = 12;

const [, , folder = '.cache/acoustic-model', count = '10'] = process.argv;
mkdirSync(`${folder}/noise`, { recursive: true });
const write = (kind: NoiseKind, seed: number) => {
  const noise = noiseOf(kind, seconds, seed, voices);
  const peak = noise.reduce((most, sample) => Math.max(most, Math.abs(sample)), 1e-9);
  const whole = Int16Array.from(noise, sample => Math.round((30_000 * sample) / peak));
  writeFileSync(`${folder}/noise/${kind}-${seed}.s16`, Buffer.from(whole.buffer));
};
for (const kind of noiseKinds) for (let i = 0; i < Number(count); i += 1) write(kind, firstSeed + i);
