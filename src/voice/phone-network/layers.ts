import type { DenseMemory, Multiply } from './kernel/dense.ts';
import type { Weights } from './weights.ts';

/** A step of the network that is fed row by row as time goes on. What it gives is good until it is fed again. */
export type Layer = (row: Float32Array) => Float32Array;

const sigmoidReach = 16;
const sigmoidPerUnit = 128;
/** The function at even places: ten thousand values of it are wanted each moment, and exponentials are dear. */
const sigmoids = Float32Array.from({ length: 2 * sigmoidReach * sigmoidPerUnit + 2 }, (_, i) => {
  return 1 / (1 + Math.exp(sigmoidReach - i / sigmoidPerUnit));
});

/** 1 / (1 + exp(-x)), within 2e-6: on the straight line between two places of the table. */
function sigmoid(x: number): number {
  if (x <= -sigmoidReach) return 0;
  if (x >= sigmoidReach) return 1;
  const at = (x + sigmoidReach) * sigmoidPerUnit;
  const below = at | 0;
  const low = sigmoids[below] as number;
  return low + (at - below) * ((sigmoids[below + 1] as number) - low);
}

const silu = (x: number) => x * sigmoid(x);

/** Reads a network's parts by name, and knows the memory that their matrices lie in. */
export class Parts {
  private readonly weights: Weights;
  private readonly memory: DenseMemory;

  constructor(weights: Weights, memory: DenseMemory) {
    this.weights = weights;
    this.memory = memory;
  }

  matrix(name: string, rows: number, columns: number): Multiply {
    return this.memory.add(this.weights.matrix(name, rows, columns));
  }

  row(name: string, length: number): Float32Array {
    return this.weights.row(name, length);
  }

  /** Outputs from inputs by weights and a bias. */
  linear(name: string, inputs: number, outputs: number): Layer {
    const multiply = this.matrix(name, outputs, inputs);
    const bias = this.row(`${name}.bias`, outputs);
    const result = new Float32Array(outputs);
    return row => {
      multiply(row, result);
      for (let o = 0; o < outputs; o++) result[o] = (result[o] as number) + (bias[o] as number);
      return result;
    };
  }

  /** Each row brought to mean 0 and deviation 1, then scaled and moved (Ba et al., arXiv:1607.06450). */
  layerNorm(name: string, width: number): Layer {
    const [scale, shift] = [this.row(name, width), this.row(`${name}.bias`, width)];
    const result = new Float32Array(width);
    return row => {
      let [sum, squares] = [0, 0];
      for (let i = 0; i < width; i++) sum += row[i] as number;
      const mean = sum / width;
      for (let i = 0; i < width; i++) squares += ((row[i] as number) - mean) ** 2;
      const over = 1 / Math.sqrt(squares / width + 1e-5);
      for (let i = 0; i < width; i++) {
        result[i] = ((row[i] as number) - mean) * over * (scale[i] as number) + (shift[i] as number);
      }
      return result;
    };
  }

  /** A layer that remembers: gated recurrent units (Cho et al., arXiv:1406.1078, in the form that PyTorch has). */
  recurrent(name: string, width: number): Layer {
    const fromInput = this.linear(`${name}.input`, width, 3 * width);
    const fromState = this.linear(`${name}.state`, width, 3 * width);
    const state = new Float32Array(width);
    return row => {
      const [x, h] = [fromInput(row), fromState(state)];
      for (let i = 0; i < width; i++) {
        const reset = sigmoid((x[i] as number) + (h[i] as number));
        const keep = sigmoid((x[width + i] as number) + (h[width + i] as number));
        const fresh = Math.tanh((x[2 * width + i] as number) + reset * (h[2 * width + i] as number));
        state[i] = (1 - keep) * fresh + keep * (state[i] as number);
      }
      return state;
    };
  }
}

/** The last rows, side by side with the oldest first; before the first there was nothing. */
export function sideBySide(width: number, count: number): Layer {
  const rows = new Float32Array(width * count);
  return row => {
    rows.copyWithin(0, width);
    rows.set(row, width * (count - 1));
    return rows;
  };
}

export function siluInPlace(row: Float32Array): Float32Array {
  for (let i = 0; i < row.length; i++) row[i] = silu(row[i] as number);
  return row;
}

export interface BlockShape {
  readonly width: number;
  readonly hidden: number;
  /** Moments that the convolution sees, and how many of them lie ahead. */
  readonly kernel: number;
  readonly ahead: number;
}

/** A layer that looks ahead: it gives nothing until it has seen so far. */
export type LateLayer = (row: Float32Array) => Float32Array | undefined;

/**
 * A gated convolution over moments and a layer over channels, each added to what came in: what it gives belongs to the
 * moment `ahead` before the one that it is fed.
 */
export function block(parts: Parts, name: string, { width, hidden, kernel, ahead }: BlockShape): LateLayer {
  const [norm1, norm2, norm3] = [1, 2, 3].map(nth => parts.layerNorm(`${name}.norm${nth}`, width)) as [
    Layer,
    Layer,
    Layer,
  ];
  const gate = parts.linear(`${name}.gate`, width, 2 * width);
  const depth = parts.row(`${name}.depth`, kernel * width);
  const depthBias = parts.row(`${name}.depth.bias`, width);
  const back = parts.linear(`${name}.back`, width, width);
  const [wide, narrow] = [
    parts.linear(`${name}.wide`, width, hidden),
    parts.linear(`${name}.narrow`, hidden, width),
  ];
  const gated = sideBySide(width, kernel);
  const before = sideBySide(width, ahead + 1);
  const fresh = new Float32Array(width);
  const mixed = new Float32Array(width);
  const sum = new Float32Array(width);
  let fed = 0;

  return row => {
    const open = gate(norm1(row));
    for (let i = 0; i < width; i++) fresh[i] = (open[i] as number) * sigmoid(open[width + i] as number);
    const seen = gated(fresh);
    const earlier = before(row);
    if (fed++ < ahead) return undefined;
    mixed.set(depthBias);
    for (let k = 0; k < kernel; k++) {
      const at = k * width;
      for (let i = 0; i < width; i++) {
        mixed[i] = (mixed[i] as number) + (seen[at + i] as number) * (depth[at + i] as number);
      }
    }
    const convolved = back(siluInPlace(norm2(mixed)));
    for (let i = 0; i < width; i++) sum[i] = (earlier[i] as number) + (convolved[i] as number);
    const spread = narrow(siluInPlace(wide(norm3(sum))));
    for (let i = 0; i < width; i++) sum[i] = (sum[i] as number) + (spread[i] as number);
    return sum;
  };
}
