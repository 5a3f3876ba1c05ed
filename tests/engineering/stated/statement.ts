import type { Given } from '../../../src/engineering/checks.ts';
import type { Result } from '../../../src/engineering/result.ts';

/** What the docstring of a calculation promises, written down apart from the program. */
export interface Statement {
  readonly name: string;
  /** Inputs that give an answer, by the names that an issue uses. */
  readonly sound: Readonly<Record<string, number>>;
  readonly compute: (given: Readonly<Record<string, Given>>) => Result<unknown>;
  /** Lowest and highest allowed value of an input, and its unit. */
  readonly ranges: Readonly<Record<string, readonly [min: number, max: number, unit: string]>>;
  readonly ruleId: string;
  /** What the source has to name, and what the validity has to say. */
  readonly source: readonly RegExp[];
  readonly validity: readonly RegExp[];
  /** Of the verdicts in the answer, in their order. */
  readonly verdictUnits?: readonly string[];
}
