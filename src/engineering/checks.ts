import { fail, type Result, type Rule } from './result.ts';

/** A result that carries no value. */
export type Failure = Extract<Result<never>, { readonly ok: false }>;

/** The values a rule holds for, both ends allowed. */
export interface Range {
  readonly min: number;
  readonly max: number;
  /** As it should read in an issue: `degC`, `kPa`, `litre`, `V`, `s`; empty for a plain number. */
  readonly unit: string;
}

/** A number that may not have been read or entered: leaving it out is answered with `missing`. */
export type Given = number | undefined;

/** One named input with its range: `[value, range]`. */
type RangedInput = readonly [value: Given, range: Range];

/** A range in words, for `Rule.validity` and `Issue.allowed`: "-40 to 50 degC". */
export const describeRange = ({ min, max, unit }: Range): string => `${min} to ${max} ${unit}`.trimEnd();

/**
 * The first input that may not be calculated with, or `undefined` when all may.
 * Absent is `missing`, NaN and infinities are `notANumber`, the rest `outOfRange`.
 *
 *     const refused = refuse({ ambientC: [ambientC, AMBIENT_C], altitudeM: [altitudeM, ALTITUDE_M] });
 *     if (refused) return refused;
 */
export function refuse(inputs: Readonly<Record<string, RangedInput>>): Failure | undefined {
  for (const [name, [value, range]] of Object.entries(inputs)) {
    const allowed = describeRange(range);
    if (value === undefined) return fail('missing', name, { allowed });
    // As text: a record cannot carry NaN or an infinity as a number.
    if (!Number.isFinite(value)) return fail('notANumber', name, { given: String(value), allowed });
    if (value < range.min || value > range.max) return fail('outOfRange', name, { given: value, allowed });
  }
  return undefined;
}

/** The same refusal with the place of the input put in front, for lists: `parts[1].litres`. */
export const located = (refused: Failure, place: string): Failure => ({
  ok: false,
  issue: { ...refused.issue, input: `${place}.${refused.issue.input}` },
});

/**
 * `ok` for a number that was worked out, refused as `outOfRange` of `input` when the arithmetic left the
 * finite numbers or the stated range of results.
 */
export function okWithin(value: number, range: Range, rule: Rule, input: string): Result<number> {
  const refused = refuse({ [input]: [value, range] });
  return refused ?? { ok: true, value, rule };
}

/**
 * The inputs, each known to be there and within its range, or the first issue as `refuse` finds it.
 *
 *     const given = take({ altitudeM: [altitudeM, ALTITUDE_M] });
 *     if (!given.ok) return given;
 *     const { altitudeM } = given.values;
 */
export function take<K extends string>(
  inputs: Readonly<Record<K, RangedInput>>,
): { readonly ok: true; readonly values: Readonly<Record<K, number>> } | Failure {
  const refused = refuse(inputs);
  if (refused) return refused;
  const values: Partial<Record<K, number>> = {};
  for (const name in inputs) values[name] = inputs[name][0];
  return isComplete(values, inputs) ? { ok: true, values } : fail('missing', Object.keys(inputs).join(', '));
}

const isComplete = <K extends string>(
  values: Partial<Record<K, number>>,
  inputs: Readonly<Record<K, unknown>>,
): values is Record<K, number> =>
  Object.keys(inputs).length === Object.values(values).filter(value => value !== undefined).length;
