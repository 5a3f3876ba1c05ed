import { median } from 'simple-statistics';
import { fail, ok, type Result, type Rule } from './result.ts';

export const MODIFIED_Z_SOURCE =
  'B. Iglewicz and D. Hoaglin, How to Detect and Handle Outliers, ASQC 1993; recommended in the NIST/SEMATECH e-Handbook of Statistical Methods, 1.3.5.17';

const RULE: Rule = {
  id: 'modified-z-score',
  source: MODIFIED_Z_SOURCE,
  validity: 'five values or more, of one kind, the bulk of them roughly normal',
};

/** 0.75 quantile of the standard normal distribution, as the rule rounds it: makes the MAD comparable to sigma. */
export const MAD_SCALE = 0.6745;

/** For a normal distribution sigma is sqrt(pi / 2) times the mean absolute deviation (closed form). */
const MEAN_SCALE = Math.sqrt(Math.PI / 2);

/** Beyond this a value is labelled a potential outlier. */
export const OUTLIER_SCORE = 3.5;

/** Of fewer the median deviation says too little: own choice. */
const FEWEST = 5;

interface Scored {
  readonly median: number;
  /** Median of the absolute deviations from the median. */
  readonly medianDeviation: number;
  /** Modified z-score of each value, in the order given. */
  readonly scores: readonly number[];
}

/**
 * Modified z-scores, 0.6745 (x - median) / MAD, of values in any one unit. Where more than half of the values
 * are the same, so that the MAD is zero, the mean absolute deviation stands in for it.
 *
 * @param values five or more, all finite
 * @returns `tooLittleData` for fewer values, `notANumber` when one is not finite
 */
export function scoreOutliers(values: readonly number[]): Result<Scored> {
  if (!values.every(Number.isFinite)) return fail('notANumber', 'values');
  if (values.length < FEWEST)
    return fail('tooLittleData', 'values', { given: values.length, allowed: `${FEWEST} values or more` });
  const middle = median([...values]);
  const deviations = values.map(value => Math.abs(value - middle));
  const medianDeviation = median(deviations);
  const meanDeviation = deviations.reduce((sum, deviation) => sum + deviation / deviations.length, 0);
  const sigma = medianDeviation > 0 ? medianDeviation / MAD_SCALE : meanDeviation * MEAN_SCALE;
  const scores = values.map(value => (sigma > 0 ? (value - middle) / sigma : 0));
  return ok({ median: middle, medianDeviation, scores }, RULE);
}
