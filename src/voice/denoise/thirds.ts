/**
 * Half the length of the filter at the lower rate: it passes to 7 kHz, is 6 dB down at 7.5, and suppresses what
 * would be mirrored.
 */
const halfTaps = 12;
const factor = 3;
/** Samples at the lower rate that going up and down again takes. */
export const thirdsDelay = 2 * halfTaps;
const cutOff = 0.94;

/** A windowed sinc at three times the rate, one tap at the middle; its gain is 1. */
const taps = (() => {
  const middle = halfTaps * factor;
  const raw = Float32Array.from({ length: 2 * middle + 1 }, (_, i) => {
    const x = ((i - middle) / factor) * cutOff;
    const sinc = x === 0 ? 1 : Math.sin(Math.PI * x) / (Math.PI * x);
    return sinc * (0.5 + 0.5 * Math.cos((Math.PI * (i - middle)) / (middle + 1)));
  });
  const sum = raw.reduce((all, tap) => all + tap, 0);
  return raw.map(tap => tap / sum);
})();

/** The last samples of a stream with the next piece behind them. */
class Past {
  private kept: Float32Array;

  constructor(length: number) {
    this.kept = new Float32Array(length);
  }

  with(samples: Float32Array): Float32Array {
    const joined = new Float32Array(this.kept.length + samples.length);
    joined.set(this.kept);
    joined.set(samples, this.kept.length);
    this.kept = joined.slice(joined.length - this.kept.length);
    return joined;
  }
}

/** The filter's answer at one place: `taps` from `first` on in steps, against the past from `newest` back. */
function filtered(past: Float32Array, newest: number, first: number, step: number): number {
  let sum = 0;
  for (let tap = first, at = newest; tap < taps.length; tap += step, at--) {
    sum += (taps[tap] ?? 0) * (past[at] ?? 0);
  }
  return sum;
}

/** Three samples for each one, without seams between pieces. */
export function createTripler(): (samples: Float32Array) => Float32Array {
  const reach = 2 * halfTaps;
  const past = new Past(reach);
  return samples => {
    const joined = past.with(samples);
    const tripled = new Float32Array(samples.length * factor);
    for (let i = 0; i < tripled.length; i++) {
      const phase = i % factor;
      tripled[i] = factor * filtered(joined, reach + (i - phase) / factor, phase, factor);
    }
    return tripled;
  };
}

/** One sample for each three, without seams; pieces have to be whole threes. */
export function createThirder(): (samples: Float32Array) => Float32Array {
  const reach = taps.length - 1;
  const past = new Past(reach);
  return samples => {
    const joined = past.with(samples);
    const third = new Float32Array(samples.length / factor);
    for (let i = 0; i < third.length; i++) third[i] = filtered(joined, reach + factor * (i + 1) - 1, 0, 1);
    return third;
  };
}
