import { type Given, type Range, take } from './checks.ts';
import { judge, ok, type Result, type Rule, type Verdict } from './result.ts';

const AGREEMENT_RULE: Rule = {
  id: 'two-readings-agree',
  source: 'worst case of two errors, one of each way to read: their sum (closed form)',
  validity: 'two readings of one quantity at one moment, each within its own tolerance of the truth',
};

const ANY: Range = { min: -1e6, max: 1e6, unit: 'the unit of both' };
const TOLERANCE: Range = { min: 0, max: 1e6, unit: 'the unit of both' };

/**
 * Holds two readings of one quantity against each other: they agree while they differ by no more than the sum of
 * their tolerances. All four in `unit`; a verdict on the difference, or an issue for what is no number.
 */
export function judgeAgreement(
  one: { readonly value: Given; readonly tolerance: Given },
  other: { readonly value: Given; readonly tolerance: Given },
  unit: string,
): Result<Verdict> {
  const given = take({
    one: [one.value, ANY],
    other: [other.value, ANY],
    oneTolerance: [one.tolerance, TOLERANCE],
    otherTolerance: [other.tolerance, TOLERANCE],
  });
  if (!given.ok) return given;
  const { oneTolerance, otherTolerance } = given.values;
  const difference = Math.abs(given.values.one - given.values.other);
  return ok(judge(difference, unit, { max: oneTolerance + otherTolerance }, AGREEMENT_RULE), AGREEMENT_RULE);
}
