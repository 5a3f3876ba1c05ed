import type { Tensor } from './weights.ts';

/** A step of the network that is fed row by row as time goes on; not each row need give one. */
export type Layer = (row: Float32Array) => Float32Array<ArrayBuffer> | undefined;

/** Weights from some inputs to some outputs, the inputs of an output side by side, from a place in `values` on. */
interface Weighting {
  readonly values: Float32Array;
  readonly from: number;
  readonly inCount: number;
  readonly outCount: number;
}

/**
 * Adds the weighted inputs to the outputs. Four outputs at a time: this loop is where the time goes, and each input is
 * fetched once for four of them.
 */
function accumulate(
  outputs: Float32Array,
  inputs: Float32Array,
  { values, from, inCount, outCount }: Weighting,
): void {
  let o = 0;
  for (; o + 4 <= outCount; o += 4) {
    const w0 = from + o * inCount;
    const w1 = w0 + inCount;
    const w2 = w1 + inCount;
    const w3 = w2 + inCount;
    let [s0, s1, s2, s3] = [0, 0, 0, 0];
    for (let i = 0; i < inCount; i++) {
      const input = inputs[i] as number;
      s0 += input * (values[w0 + i] as number);
      s1 += input * (values[w1 + i] as number);
      s2 += input * (values[w2 + i] as number);
      s3 += input * (values[w3 + i] as number);
    }
    outputs[o] = (outputs[o] as number) + s0;
    outputs[o + 1] = (outputs[o + 1] as number) + s1;
    outputs[o + 2] = (outputs[o + 2] as number) + s2;
    outputs[o + 3] = (outputs[o + 3] as number) + s3;
  }
  for (; o < outCount; o++) {
    let sum = 0;
    for (let i = 0; i < inCount; i++) {
      sum += (inputs[i] as number) * (values[from + o * inCount + i] as number);
    }
    outputs[o] = (outputs[o] as number) + sum;
  }
}

/**
 * A convolution over moments that lie `dilation` rows apart, the last of them now; before the first there was nothing.
 * It gives a row for every `stride`-th, the first with them.
 * @param kernel shape: moments, channels out, channels in
 */
export function convolution(kernel: Tensor, bias: Tensor, dilation = 1, stride = 1): Layer {
  const [moments = 1, outCount = 1, inCount = 1] = kernel.shape;
  const past: Float32Array[] = Array.from(
    { length: (moments - 1) * dilation },
    () => new Float32Array(inCount),
  );
  let rows = 0;
  return row => {
    past.push(row);
    const wanted = rows++ % stride === 0;
    const result = Float32Array.from(bias.values);
    for (let t = 0; wanted && t < moments; t++) {
      const weighting = { values: kernel.values, from: t * inCount * outCount, inCount, outCount };
      accumulate(result, past[t * dilation] as Float32Array, weighting);
    }
    past.shift();
    return wanted ? result : undefined;
  };
}
