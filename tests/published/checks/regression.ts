import { sampleRankCorrelation } from 'simple-statistics';
import { anyCurve } from '../../../src/engineering/first-order-family.ts';
import { searchRate } from '../../../src/engineering/first-order-fit.ts';
import { gather } from '../../../src/engineering/first-order-points.ts';
import { fitLine, spearmanCritical, student975 } from '../../../src/engineering/statistics.ts';
import type { PublishedCheck } from '../check.ts';

const NORRIS_X = [
  0.2, 337.4, 118.2, 884.6, 10.1, 226.5, 666.3, 996.3, 448.6, 777, 558.2, 0.4, 0.6, 775.5, 666.9, 338, 447.5,
  11.6, 556, 228.1, 995.8, 887.6, 120.2, 0.3, 0.3, 556.8, 339.1, 887.2, 999, 779, 11.1, 118.3, 229.2, 669.1,
  448.9, 0.5,
];
const NORRIS_Y = [
  0.1, 338.8, 118.1, 888, 9.2, 228.1, 668.5, 998.5, 449.1, 778.9, 559.2, 0.3, 0.1, 778.1, 668.8, 339.3, 448.9,
  10.8, 557.7, 228.3, 998, 888.8, 119.6, 0.3, 0.6, 557.6, 339.3, 888, 998.5, 778.9, 10.2, 117.6, 228.9, 668.4,
  449.2, 0.2,
];
const norris = fitLine(NORRIS_X, NORRIS_Y);

const NORRIS = [
  ['slope', 1.00211681802045, norris?.slope],
  ['intercept', -0.262323073774029, norris?.intercept],
  ['standard error of the slope', 0.429796848199937e-3, norris?.slopeError],
  ['residual standard deviation', 0.884796396144373, norris?.residualDeviation],
] as const;

/** y = b1 (1 - exp(-b2 x)): the first-order curves that pass through the origin. */
const throughOrigin = (data: readonly (readonly [number, number])[]) => {
  const points = gather(data.map(([timeS, value]) => ({ timeS, value })));
  const curves = anyCurve(points);
  return searchRate(rate => curves.squaresThrough(rate, -points.originS, 0), points.spanS, 1e-8);
};

const misra1a = throughOrigin([
  [77.6, 10.07],
  [114.9, 14.73],
  [141.1, 17.94],
  [190.8, 23.93],
  [239.9, 29.61],
  [289, 35.18],
  [332.8, 40.02],
  [378.4, 44.82],
  [434.8, 50.76],
  [477.3, 55.05],
  [536.8, 61.01],
  [593.1, 66.4],
  [689.1, 75.47],
  [760, 81.78],
]);
const boxBod = throughOrigin([
  [1, 109],
  [2, 149],
  [3, 149],
  [5, 191],
  [7, 213],
  [10, 224],
]);

const EXPONENTIAL = [
  ['Misra1a', 'rate b2', 5.5015643181e-4, misra1a.rate],
  ['Misra1a', 'residual sum of squares', 1.2455138894e-1, misra1a.squares],
  ['BoxBOD', 'rate b2', 5.4723748542e-1, boxBod.rate],
  ['BoxBOD', 'residual sum of squares', 1.1680088766e3, boxBod.squares],
] as const;

/** Degrees of freedom, value exceeded with probability 0.025. */
const STUDENT = [
  [3, 3.182, 0.005],
  [4, 2.776, 0.002],
  [5, 2.571, 0.001],
  [10, 2.228, 0.0006],
  [17, 2.11, 0.0006],
  [30, 2.042, 0.0006],
  [100, 1.984, 0.0006],
] as const;

/** Pairs, one-sided 5 % critical value. */
const SPEARMAN = [
  [5, 0.9],
  [8, 0.643],
  [10, 0.564],
  [15, 0.446],
  [20, 0.38],
  [25, 0.337],
  [30, 0.306],
] as const;

export const regressionChecks: readonly PublishedCheck[] = [
  ...NORRIS.map(([quantity, expected, got]) => ({
    subject: 'trend of idle and sweep',
    source: 'NIST StRD, linear regression, Norris (itl.nist.gov/div898/strd), certified values',
    quantity,
    unit: '',
    expected,
    tolerance: Math.abs(expected) * 1e-11,
    compute: () => got ?? Number.NaN,
  })),
  ...EXPONENTIAL.map(([dataset, quantity, expected, got]) => ({
    subject: 'first-order fit',
    source: `NIST StRD, nonlinear regression, ${dataset} (itl.nist.gov/div898/strd), certified values`,
    quantity,
    unit: '',
    expected,
    tolerance: expected * 1e-6,
    compute: () => got,
  })),
  ...STUDENT.map(([degrees, expected, tolerance]) => ({
    subject: 'confidence interval',
    source: "NIST/SEMATECH e-Handbook 1.3.6.7.2, upper critical values of Student's t, 0.025",
    quantity: `t for ${degrees} degrees of freedom`,
    unit: '',
    expected,
    tolerance,
    compute: () => student975(degrees),
  })),
  ...SPEARMAN.map(([pairs, expected]) => ({
    subject: 'oil pressure in a sweep',
    source: "Table of upper critical values of Spearman's rank correlation, 0.05 one-sided (Zar)",
    quantity: `critical rank correlation of ${pairs} pairs`,
    unit: '',
    expected,
    tolerance: 0.0045,
    compute: () => spearmanCritical(pairs) ?? Number.NaN,
  })),
  {
    subject: 'oil pressure in a sweep',
    source: 'Textbook example of ten pairs of English and mathematics marks: 1 - 6 x 54 / 990',
    quantity: 'Spearman rank correlation (library)',
    unit: '',
    expected: 0.672727,
    tolerance: 1e-6,
    compute: () =>
      sampleRankCorrelation(
        [56, 75, 45, 71, 62, 64, 58, 80, 76, 61],
        [66, 70, 40, 60, 65, 56, 59, 77, 67, 63],
      ),
  },
];
