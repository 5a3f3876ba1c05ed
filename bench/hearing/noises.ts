import { normal, uniform } from '../../audio-fixtures/random.ts';
import { synthesize } from '../../audio-fixtures/synthesize.ts';
import { speechRateHz } from '../../src/voice/resample.ts';
import { idleNoise, sweepNoise } from './engine-noise.ts';
import { chain, highPass, lowPass, resonator } from './filters.ts';
import { added, levelled, scaled } from './mix.ts';
import { workshopTalk } from './talk.ts';

export const noiseKinds = ['idle', 'sweep', 'fan', 'wrench', 'babble', 'radio'] as const;
export type NoiseKind = (typeof noiseKinds)[number];

/** A radiator fan: rushing air, and the beat of its blades. */
function fan(seconds: number, seed: number): Float32Array {
  const gauss = normal(seed);
  const rush = chain(highPass(80), lowPass(900, 0.5));
  const bladesHz = 90 + (seed % 7) * 10;
  return Float32Array.from({ length: seconds * speechRateHz }, (_, i) => {
    const beat = Math.sin((2 * Math.PI * bladesHz * i) / speechRateHz);
    return (1 + 0.3 * beat) * rush(gauss()) + 0.03 * gauss() + 0.08 * beat;
  });
}

/** An impact wrench: bursts of blows that ring high, with air hissing out, and rests in between. */
function wrench(seconds: number, seed: number): Float32Array {
  const random = uniform(seed);
  const gauss = normal(seed + 1);
  const rings = [1_900, 3_100, 4_700].map(hz => resonator(hz * (0.9 + 0.2 * random()), 8));
  const hiss = highPass(2_500);
  let [running, left, nextBlow, blow] = [false, 0, 0, 0];
  return Float32Array.from({ length: seconds * speechRateHz }, () => {
    if (left-- <= 0) {
      running = !running;
      left = speechRateHz * (running ? 0.8 + random() : 0.7 + random());
    }
    if (running && nextBlow-- <= 0) {
      blow = 0.7 + 0.6 * random();
      nextBlow = speechRateHz / (22 + 4 * random());
    }
    blow *= Math.exp(-1 / (0.003 * speechRateHz));
    const strike = blow * gauss();
    return rings.reduce((sum, ring) => sum + ring(strike), 0) + (running ? 0.05 * hiss(gauss()) : 0);
  });
}

/** Sentences one after the other, from a place in the talk that the seed names, without long gaps. */
export function speechOf(voice: string, seconds: number, seed: number): Float32Array {
  const random = uniform(seed);
  const all = new Float32Array(seconds * speechRateHz);
  for (let at = 0; at < all.length; ) {
    const text = workshopTalk[Math.floor(random() * workshopTalk.length)] ?? '';
    const { samples } = synthesize(voice, text);
    const speech = levelled(samples).subarray(0.4 * speechRateHz, -0.4 * speechRateHz);
    all.set(speech.subarray(0, all.length - at), at);
    at += speech.length;
  }
  return all;
}

/** Many people talking at once, each from somewhere else in the shop. */
function babble(seconds: number, seed: number, voices: readonly string[]): Float32Array {
  return Array.from({ length: 8 }, (_, i) =>
    scaled(speechOf(voices[i % voices.length] ?? '', seconds, seed + i), 0.6 + 0.1 * (i % 5)),
  ).reduce(added);
}

/** Levelled speech through a small loudspeaker in the corner: narrow and pressed together. */
export function throughRadio(speech: Float32Array): Float32Array {
  const speaker = chain(highPass(300), highPass(300), lowPass(3_400), lowPass(3_400));
  return speech.map(sample => speaker(Math.tanh(12 * sample)));
}

/** Somebody talking on the radio. */
const radio = (seconds: number, seed: number, voices: readonly string[]): Float32Array =>
  throughRadio(speechOf(voices[seed % voices.length] ?? '', seconds, seed));

/** Noise of a kind, the same for the same seed. @param voices those that babble and speak on the radio */
export function noiseOf(
  kind: NoiseKind,
  seconds: number,
  seed: number,
  voices: readonly string[],
): Float32Array {
  switch (kind) {
    case 'idle':
      return idleNoise(seconds, seed);
    case 'sweep':
      return sweepNoise(seconds, seed);
    case 'fan':
      return fan(seconds, seed);
    case 'wrench':
      return wrench(seconds, seed);
    case 'babble':
      return babble(seconds, seed, voices);
    case 'radio':
      return radio(seconds, seed, voices);
  }
}
