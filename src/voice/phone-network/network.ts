import { convolution, type Layer } from './layers.ts';
import { bandCount, createCentring, createLogMel } from './log-mel.ts';
import { phones } from './phones.ts';
import { tensorOf, type Weights } from './weights.ts';

/** What the network makes of 40 ms of sound. */
export interface Moment {
  /** Log likelihood of no phone (index 0) and of each of `phones`, against the likeliest: 0 or less. */
  readonly phones: Float32Array;
  /** Probability that somebody near is speaking. */
  readonly near: number;
}

/** Time of one moment. */
export const momentMs = 40;

/** Channels out, moments looked at, rows between them, rows for one, and whether the input is added to the output. */
const layers = [
  { channels: 128, moments: 5, dilation: 1, stride: 2, adds: false },
  { channels: 128, moments: 3, dilation: 1, stride: 1, adds: true },
  { channels: 128, moments: 3, dilation: 2, stride: 1, adds: true },
  { channels: 192, moments: 3, dilation: 1, stride: 2, adds: false },
  { channels: 192, moments: 3, dilation: 1, stride: 1, adds: true },
  { channels: 192, moments: 3, dilation: 2, stride: 1, adds: true },
  { channels: 192, moments: 3, dilation: 4, stride: 1, adds: true },
  { channels: 192, moments: 3, dilation: 1, stride: 1, adds: true },
  { channels: 192, moments: 3, dilation: 2, stride: 1, adds: true },
  { channels: 192, moments: 3, dilation: 4, stride: 1, adds: true },
] as const;

function createLayers(weights: Weights): readonly Layer[] {
  let inputs = bandCount;
  const hidden = layers.map(({ channels, moments, dilation, stride, adds }, i): Layer => {
    const kernel = tensorOf(weights, `layer.${i}`, [moments, channels, inputs]);
    const bias = tensorOf(weights, `layer.${i}.bias`, [channels]);
    inputs = channels;
    const convolve = convolution(kernel, bias, dilation, stride);
    return row => convolve(row)?.map((value, o) => Math.max(0, value) + (adds ? (row[o] as number) : 0));
  });
  const outputs = phones.length + 2;
  const out = convolution(
    tensorOf(weights, 'out', [1, outputs, inputs]),
    tensorOf(weights, 'out.bias', [outputs]),
  );
  return [...hidden, out];
}

function momentOf(outputs: Float32Array): Moment {
  const scores = outputs.subarray(0, outputs.length - 1);
  const best = scores.reduce((most, score) => Math.max(most, score), Number.NEGATIVE_INFINITY);
  const nearness = outputs.at(-1) ?? Number.NEGATIVE_INFINITY;
  return { phones: scores.map(score => score - best), near: 1 / (1 + Math.exp(-nearness)) };
}

/**
 * Listens to sound at 16 kHz in pieces of any length and says what each 40 ms of it may be. It remembers the last
 * seconds, and never looks ahead.
 * @throws VoiceError `modelUnusable` when the weights are not those of this network.
 */
export function createPhoneNetwork(weights: Weights): (samples: Float32Array) => readonly Moment[] {
  const logMel = createLogMel();
  const centre = createCentring();
  const all = createLayers(weights);
  return samples =>
    logMel(samples)
      .flatMap(centre)
      .flatMap(row => {
        const outputs = all.reduce<Float32Array | undefined>((rows, layer) => rows && layer(rows), row);
        return outputs === undefined ? [] : [momentOf(outputs)];
      });
}
