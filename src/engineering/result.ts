/** Where a figure comes from, said beside every result. */
export interface Rule {
  /** Stable name of the rule, e.g. `astm-d341`. */
  readonly id: string;
  /** Document, table and edition, or "common practice, no published source", or "... (from memory)". */
  readonly source: string;
  /** The range of inputs in which the rule holds, in words. */
  readonly validity: string;
}

type IssueCode =
  /** An input that the calculation needs was not given. */
  | 'missing'
  /** Not a finite number, or outside what is physically possible. */
  | 'notANumber'
  /** Outside the range in which the rule holds. */
  | 'outOfRange'
  /** Two inputs cannot both be true. */
  | 'contradictory'
  /** Too few readings, or too little spread between them, for a result that means anything. */
  | 'tooLittleData'
  /** The rule has no answer for these inputs: nothing on offer meets the need. */
  | 'noSolution';

/** Why a calculation gives no value: a code and its facts, put into words by `describeIssue`. */
export interface Issue {
  readonly code: IssueCode;
  /** The input at fault, named as in the function's parameters, units included: `oilPressureKpa`. */
  readonly input: string;
  readonly given?: number | string;
  /** What would be allowed, in words with units. */
  readonly allowed?: string;
}

/** What a calculation gives back: a value with the rule behind it, or a coded issue; never NaN, never a guess. */
export type Result<T> =
  | { readonly ok: true; readonly value: T; readonly rule: Rule }
  | { readonly ok: false; readonly issue: Issue };

/** A measured quantity held against its limits (all in the SI unit that `unit` names). */
export interface Verdict {
  readonly met: boolean;
  readonly value: number;
  readonly unit: string;
  readonly min?: number;
  readonly max?: number;
  /** Distance to the nearest limit; negative when the limit is broken. */
  readonly margin: number;
  readonly rule: Rule;
}

export const ok = <T>(value: T, rule: Rule): Result<T> => ({ ok: true, value, rule });

export const fail = (
  code: IssueCode,
  input: string,
  details: { given?: number | string; allowed?: string } = {},
): { readonly ok: false; readonly issue: Issue } => ({ ok: false, issue: { code, input, ...details } });

const reasons: Record<IssueCode, string> = {
  missing: 'is missing',
  notANumber: 'is not a usable number',
  outOfRange: 'is outside the range of the rule',
  contradictory: 'contradicts another input',
  tooLittleData: 'is too little to calculate from',
  noSolution: 'leaves no answer',
};

/** One sentence for an issue: what is wrong, where, and what would be allowed. */
export function describeIssue(issue: Issue): string {
  const given = issue.given === undefined ? '' : ` (${issue.given})`;
  const allowed = issue.allowed === undefined ? '' : `; allowed: ${issue.allowed}`;
  return `${issue.input}${given} ${reasons[issue.code]}${allowed}.`;
}

/**
 * Holds a value against its limits. A value that is not finite never meets them.
 * At least one of `min` and `max` is expected; a limit itself counts as met.
 */
export function judge(
  value: number,
  unit: string,
  limits: { readonly min?: number; readonly max?: number },
  rule: Rule,
): Verdict {
  const margins = [
    limits.min === undefined ? Number.POSITIVE_INFINITY : value - limits.min,
    limits.max === undefined ? Number.POSITIVE_INFINITY : limits.max - value,
  ];
  const margin = Math.min(...margins);
  return { met: Number.isFinite(value) && margin >= 0, value, unit, ...limits, margin, rule };
}
