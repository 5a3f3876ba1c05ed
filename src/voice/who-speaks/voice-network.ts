import { DenseMemory } from '../phone-network/kernel/dense.ts';
import { Parts, siluInPlace } from '../phone-network/layers.ts';
import { bandCount, createLogMel, hopSamples } from '../phone-network/log-mel.ts';
import type { Weights } from '../phone-network/weights.ts';

/** A direction for a voice: numbers of length 1 together, near those of the same voice and far from those of others. */
export type Voice = Float32Array;

/** Length of a voice's direction. */
export const voiceLength = 96;
/** Mark of its file. */
export const voiceNetworkMark = 'first-fire voice network 1\n';

const width = 160;
const hidden = 2 * width;
const attention = 48;
const stemRows = 5;
const stemStride = 2;
const kernel = 7;
/** Rows between those that each block looks at. */
const spreads = [1, 1, 2, 2, 3];
const leastSpread = 1e-4;

/** Less sound than this tells nothing of a voice, s. */
const leastS = 0.25;

type Rows = readonly Float32Array[];

/** Each band against its mean over the utterance: how loud it was, and through what microphone, goes out of it. */
function centred(rows: Rows): Rows {
  const means = new Float64Array(bandCount);
  for (const row of rows)
    for (let i = 0; i < bandCount; i++) means[i] = (means[i] as number) + (row[i] as number);
  return rows.map(row => row.map((value, i) => value - (means[i] as number) / rows.length));
}

/** Rows side by side around each second one; beyond the ends there is nothing. */
function stemInputs(rows: Rows): Rows {
  const reach = (stemRows - 1) / 2;
  return Array.from({ length: Math.ceil(rows.length / stemStride) }, (_, at) => {
    const inputs = new Float32Array(stemRows * bandCount);
    for (let i = 0; i < stemRows; i++) {
      const row = rows[stemStride * at + i - reach];
      if (row) inputs.set(row, i * bandCount);
    }
    return inputs;
  });
}

function createScale(parts: Parts, name: string): (row: Float32Array) => Float32Array {
  const [scale, shift] = [parts.row(name, width), parts.row(`${name}.bias`, width)];
  return row => row.map((value, i) => value * (scale[i] as number) + (shift[i] as number));
}

/** A convolution of each channel by itself, and a layer over the channels, added to what came in. */
function createBlock(parts: Parts, name: string, spread: number): (rows: Rows) => Rows {
  const scale = createScale(parts, `${name}.norm`);
  const depth = parts.row(`${name}.depth`, kernel * width);
  const bias = parts.row(`${name}.depth.bias`, width);
  const wide = parts.linear(`${name}.wide`, width, hidden);
  const narrow = parts.linear(`${name}.narrow`, hidden, width);
  const reach = (kernel - 1) / 2;
  return rows => {
    const scaled = rows.map(scale);
    return rows.map((row, at) => {
      const mixed = bias.slice();
      for (let k = 0; k < kernel; k++) {
        const other = scaled[at + (k - reach) * spread];
        if (!other) continue;
        for (let i = 0; i < width; i++)
          mixed[i] = (mixed[i] as number) + (other[i] as number) * (depth[k * width + i] as number);
      }
      const more = narrow(siluInPlace(wide(mixed)));
      return row.map((value, i) => value + (more[i] as number));
    });
  };
}

/** Mean and spread of each channel over time, each moment by the weight that its channel gives it. */
function pooled(rows: Rows, scores: Rows): Float32Array {
  const result = new Float32Array(2 * width);
  for (let i = 0; i < width; i++) {
    const largest = scores.reduce(
      (most, score) => Math.max(most, score[i] as number),
      Number.NEGATIVE_INFINITY,
    );
    let [sum, mean, squares] = [0, 0, 0];
    rows.forEach((row, at) => {
      const weight = Math.exp((scores[at]?.[i] as number) - largest);
      const value = row[i] as number;
      sum += weight;
      mean += weight * value;
      squares += weight * value * value;
    });
    mean /= sum;
    result[i] = mean;
    result[width + i] = Math.sqrt(Math.max(leastSpread, squares / sum - mean * mean));
  }
  return result;
}

/** Brought to length 1. */
export function ofLengthOne(numbers: Float32Array): Voice {
  const length = Math.hypot(...numbers);
  return length > 0 ? numbers.map(value => value / length) : numbers;
}

/**
 * Tells voices apart: gives the direction of the voice in a piece of speech at 16 kHz, in which nobody else speaks; null
 * where it is too short to tell.
 * @throws VoiceError `modelUnusable` when the weights are not those of this network.
 */
export function createVoiceNetwork(weights: Weights): (samples: Float32Array) => Voice | null {
  const parts = new Parts(weights, new DenseMemory());
  const stem = parts.linear('stem', stemRows * bandCount, width);
  const blocks = spreads.map((spread, i) => createBlock(parts, `block${i}`, spread));
  const scale = createScale(parts, 'norm');
  const attend1 = parts.linear('attend1', width, attention);
  const attend2 = parts.linear('attend2', attention, width);
  const out = parts.linear('out', 2 * width, voiceLength);
  const leastRows = (leastS * 16_000) / hopSamples;

  return samples => {
    const rows = createLogMel()(samples);
    if (rows.length < leastRows) return null;
    const stemmed: Rows = stemInputs(centred(rows)).map(row => siluInPlace(stem(row)).slice());
    const seen = blocks.reduce((before, next) => next(before), stemmed).map(row => siluInPlace(scale(row)));
    const scores = seen.map(row => attend2(attend1(row).map(Math.tanh)).slice());
    return ofLengthOne(out(pooled(seen, scores)).slice());
  };
}
