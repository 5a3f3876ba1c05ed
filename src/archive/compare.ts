import { OUTLIER_SCORE, scoreOutliers } from '../engineering/outliers.ts';
import { describeIssue } from '../engineering/result.ts';
import type { MeasuredStart } from './archive.ts';
import { type MeasureName, measures } from './measures.ts';

/** One start among others. */
export interface Compared extends MeasuredStart {
  /** Modified z-score; null when there are too few values to judge. */
  readonly score: number | null;
  readonly outlier: boolean;
}

/** Values in the SI unit named. */
export interface Comparison {
  readonly measure: MeasureName;
  readonly title: string;
  readonly unit: string;
  /** Oldest first. */
  readonly starts: readonly Compared[];
  readonly median: number | null;
  readonly medianDeviation: number | null;
  /** The rule by which outliers are marked, with its source; or why none is. */
  readonly rule: string;
  /** Different engine profiles among them: these need not be alike. */
  readonly profiles: readonly string[];
}

/** Holds starts against each other. Pure. */
export function compareStarts(measure: MeasureName, starts: readonly MeasuredStart[]): Comparison {
  const scored = scoreOutliers(starts.map(({ value }) => value));
  const compared = starts.map((start, index): Compared => {
    const score = scored.ok ? (scored.value.scores[index] ?? null) : null;
    return { ...start, score, outlier: score !== null && Math.abs(score) > OUTLIER_SCORE };
  });
  return {
    measure,
    title: measures[measure].title,
    unit: measures[measure].unit,
    starts: compared,
    median: scored.ok ? scored.value.median : null,
    medianDeviation: scored.ok ? scored.value.medianDeviation : null,
    rule: scored.ok
      ? `modified z-score beyond ${OUTLIER_SCORE}: ${scored.rule.source}`
      : `no outliers are marked: ${describeIssue(scored.issue)}`,
    profiles: [...new Set(starts.map(({ session }) => session.profile))].sort(),
  };
}
