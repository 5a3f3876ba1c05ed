/** What the statistics library lacks: a line with its uncertainty, and two tables of critical values. */

interface Line {
  readonly slope: number;
  readonly intercept: number;
  /** Standard error of the slope. */
  readonly slopeError: number;
  /** Standard deviation of the values about the line. */
  readonly residualDeviation: number;
}

/**
 * Least-squares line through points (closed form), or `undefined` for fewer than three points or points
 * that all have one x: nothing can be said of the spread about a line then.
 */
export function fitLine(xs: readonly number[], ys: readonly number[]): Line | undefined {
  const count = Math.min(xs.length, ys.length);
  if (count < 3) return undefined;
  let meanX = 0;
  let meanY = 0;
  for (const [i, x] of xs.entries()) {
    meanX += x / count;
    meanY += (ys[i] ?? Number.NaN) / count;
  }
  let sumXx = 0;
  let sumXy = 0;
  for (const [i, x] of xs.entries()) {
    sumXx += (x - meanX) ** 2;
    sumXy += (x - meanX) * ((ys[i] ?? Number.NaN) - meanY);
  }
  if (!(sumXx > 0)) return undefined;
  const slope = sumXy / sumXx;
  let squares = 0;
  for (const [i, x] of xs.entries()) squares += ((ys[i] ?? Number.NaN) - meanY - slope * (x - meanX)) ** 2;
  const residualDeviation = Math.sqrt(squares / (count - 2));
  return {
    slope,
    intercept: meanY - slope * meanX,
    slopeError: residualDeviation / Math.sqrt(sumXx),
    residualDeviation,
  };
}

/** Standard normal deviate that leaves 2.5 % above it. */
const Z_975 = 1.959963984540054;

/**
 * Student's t that leaves 2.5 % above it, for a 95 % interval: the asymptotic series of Abramowitz and
 * Stegun, Handbook of Mathematical Functions, 26.7.5, to four terms.
 *
 * `degrees` of freedom from 3 up (there within 0.15 %, from 5 within 0.02 %); below that NaN, so that
 * nothing is claimed.
 */
export function student975(degrees: number): number {
  if (!(degrees >= 3)) return Number.NaN;
  const z = Z_975;
  const terms = [
    (z ** 3 + z) / 4,
    (5 * z ** 5 + 16 * z ** 3 + 3 * z) / 96,
    (3 * z ** 7 + 19 * z ** 5 + 17 * z ** 3 - 15 * z) / 384,
    (79 * z ** 9 + 776 * z ** 7 + 1482 * z ** 5 - 1920 * z ** 3 - 945 * z) / 92160,
  ];
  return terms.reduce((sum, term, i) => sum + term / degrees ** (i + 1), z);
}

/** One-sided 5 % critical values of Spearman's rank correlation, from 5 pairs up. */
const SPEARMAN_95 = [
  0.9, 0.829, 0.714, 0.643, 0.6, 0.564, 0.536, 0.503, 0.484, 0.464, 0.446, 0.429, 0.414, 0.401, 0.391, 0.38,
];

/** Standard normal deviate that leaves 5 % above it. */
const Z_95 = 1.6448536269514722;

/**
 * Spearman rank correlation that pairs without any connection reach in at most 5 % of cases.
 * Tabled to 20 pairs (Zar, Biostatistical Analysis, table of Spearman critical values), then the large-sample
 * z / sqrt(n - 1); `undefined` below 5 pairs, where even perfect order may be chance.
 */
export function spearmanCritical(pairs: number): number | undefined {
  if (!(pairs >= 5)) return undefined;
  return SPEARMAN_95[pairs - 5] ?? Z_95 / Math.sqrt(pairs - 1);
}
