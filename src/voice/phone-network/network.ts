import { DenseMemory } from './kernel/dense.ts';
import { block, Parts, sideBySide, siluInPlace } from './layers.ts';
import { bandCount, createCentring, createLogMel } from './log-mel.ts';
import { blank } from './phones.ts';
import type { Weights } from './weights.ts';

/** What the network makes of 30 ms of sound. */
export interface Moment {
  /**
   * Log probability of no phone (index 0) and of each of its language's phones, of the moment `phonesLateMomentsOf` the weights
   * before this one: the surer outputs, which look further ahead.
   */
  readonly phones: Float32Array;
  /** The same of this moment, from fewer layers, which look 80 ms ahead: what stop wordings are listened for with. */
  readonly early: Float32Array;
  /** Probability that somebody near is speaking, at this moment. */
  readonly near: number;
}

/** Time of one moment. */
export const momentMs = 30;
const rowsOfMoment = 3;
const stemWidth = 96;
const shape = { width: 256, hidden: 768, kernel: 9 };
/** After how many blocks the recurrent layer and the early outputs stand. */
const recurrentAfter = 3;
const earlyAfter = 4;
/** Moments that each block looks ahead, in a file that does not say it. */
const formerAhead = [1, 1, 0, 0, 1, 1, 1, 1];
const aheadOf = ({ ahead = formerAhead }: Weights): readonly number[] => ahead;

/** How much later than `early` and `near` the surer outputs of a moment come, in moments. */
export const phonesLateMomentsOf = (weights: Weights): number =>
  aheadOf(weights)
    .slice(earlyAfter)
    .reduce((sum, moments) => sum + moments, 0);

/** No band of a row is louder than in noise at -84 dB of full scale: fainter than any room. */
const quietPower = -5;
const restAfterRows = 100;

/** Rows of mel bands to rows of the network's width, one for each moment. */
function createStem(parts: Parts): (row: Float32Array) => Float32Array | undefined {
  const inputs = sideBySide(2 * bandCount, 3);
  const first = parts.linear('stem1', 3 * 2 * bandCount, stemWidth);
  const firsts = sideBySide(stemWidth, 5);
  const second = parts.linear('stem2', 5 * stemWidth, shape.width);
  let rows = 0;
  return row => {
    const seen = firsts(siluInPlace(first(inputs(row))));
    rows += 1;
    return rows % rowsOfMoment === 0 ? siluInPlace(second(seen)) : undefined;
  };
}

/**
 * Tells when the network may rest: after a second in which the line was so quiet that nobody can have said anything. It
 * then keeps what it remembers, and is there with the first sound.
 */
function createRest(): { next(row: Float32Array): boolean } {
  let quietRows = 0;
  return {
    next(row) {
      quietRows = row.every(power => power < quietPower) ? quietRows + 1 : 0;
      return quietRows > restAfterRows + rowsOfMoment;
    },
  };
}

/** Outputs as logarithms of probabilities that add up to 1. */
function logSoftmax(outputs: Float32Array): Float32Array {
  let largest = Number.NEGATIVE_INFINITY;
  for (const output of outputs) largest = Math.max(largest, output);
  let sum = 0;
  for (const output of outputs) sum += Math.exp(output - largest);
  const all = largest + Math.log(sum);
  return outputs.map(output => output - all);
}

/**
 * Listens to sound at 16 kHz in pieces of any length and says what each 30 ms of it may be.
 * @throws VoiceError `modelUnusable` when the weights are not those of this network.
 */
export function createPhoneNetwork(weights: Weights): (samples: Float32Array) => readonly Moment[] {
  const parts = new Parts(weights, new DenseMemory());
  const { width } = shape;
  const logMel = createLogMel();
  const centre = createCentring();
  const stem = createStem(parts);
  const blocks = aheadOf(weights).map((moments, i) =>
    block(parts, `block${i}`, { ...shape, ahead: moments }),
  );
  const recurrentNorm = parts.layerNorm('recurrent.norm', width);
  const recurrent = parts.recurrent('recurrent', width);
  const earlyNorm = parts.layerNorm('early.norm', width);
  /** No phone, and each that there is. */
  const outputs = weights.rowsOf('out');
  const earlyOut = parts.linear('early', width, outputs + 1);
  const outNorm = parts.layerNorm('out.norm', width);
  const out = parts.linear('out', width, outputs);

  /** What the later blocks have not told of yet: no phone. */
  const unknown = Float32Array.from({ length: outputs }, (_, i) => (i === blank ? 0 : -30));
  const sum = new Float32Array(width);

  function early(row: Float32Array): Float32Array | undefined {
    let x: Float32Array | undefined = row;
    for (const [i, next] of blocks.slice(0, earlyAfter).entries()) {
      x = x && next(x);
      if (x !== undefined && i + 1 === recurrentAfter) {
        const more = recurrent(recurrentNorm(x));
        for (let j = 0; j < width; j++) sum[j] = (x[j] as number) + (more[j] as number);
        x = sum;
      }
    }
    return x;
  }

  function momentOf(row: Float32Array): Moment | undefined {
    const half = early(row);
    if (half === undefined) return undefined;
    const told = earlyOut(earlyNorm(half));
    const nearness = told[outputs] as number;
    const whole = blocks.slice(earlyAfter).reduce<Float32Array | undefined>((x, next) => x && next(x), half);
    return {
      phones: whole === undefined ? unknown : logSoftmax(out(outNorm(whole))),
      early: logSoftmax(told.subarray(0, outputs)),
      near: 1 / (1 + Math.exp(-nearness)),
    };
  }

  const rest = createRest();
  let waiting: Float32Array[] = [];

  return samples =>
    logMel(samples).flatMap(row => {
      const quiet = rest.next(row);
      waiting.push(centre(row).slice());
      if (waiting.length < rowsOfMoment) return [];
      const rows = waiting;
      waiting = [];
      if (quiet) return [{ phones: unknown, early: unknown, near: 0 }];
      const stemmed = rows.map(stem).at(-1);
      const moment = stemmed && momentOf(stemmed);
      return moment === undefined ? [] : [moment];
    });
}
