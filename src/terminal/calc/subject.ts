import type { Failure, Given } from '../../engineering/checks.ts';
import type { Result, Rule, Verdict } from '../../engineering/result.ts';
import type { TimeEstimate } from '../../engineering/time-to-reach.ts';
import type { Quantity } from './quantities.ts';

/** A number that the user gives with `--flag`. */
export interface NumberOption {
  readonly flag: string;
  readonly quantity: Quantity;
  readonly help: string;
  /** Taken when the option is left out, in SI. Without it the calculation says what is missing. */
  readonly otherwise?: number;
}

/** Words that the user gives with `--flag`. */
export interface WordsOption {
  readonly flag: string;
  readonly help: string;
  readonly choices?: readonly string[];
  readonly otherwise?: string;
}

/** Lines of two numbers that the user gives in a file or on standard input. */
interface PairsInput {
  readonly quantities: readonly [Quantity, Quantity];
  readonly help: string;
}

type Pairs = readonly (readonly [number, number])[];

/** What the user gave, in SI. A calculation asks by the name that it knows the input by: `coolantC`. */
export interface Inputs<K extends string, W extends string> {
  readonly number: (key: K) => Given;
  /** `undefined` when left out. */
  readonly words: (key: W) => string | undefined;
  /** A table typed on one line, as "700:80,1500:180". */
  readonly table: (key: W, quantities: readonly [Quantity, Quantity]) => Pairs;
  readonly pairs: Pairs;
}

interface Definition<K extends string, W extends string> {
  readonly name: string;
  readonly summary: string;
  readonly numbers: Readonly<Record<K, NumberOption>>;
  readonly words: Readonly<Record<W, WordsOption>>;
  readonly pairs?: PairsInput;
  readonly answer: (inputs: Inputs<K, W>) => Answer;
}

/** A subject whose input names are no longer told apart by type, so that all can stand in one list. */
export type Subject = Definition<string, string>;

export function subject<K extends string, W extends string>(definition: Definition<K, W>): Subject {
  return definition;
}

/** One line of an answer, in SI. */
export type Line =
  | { readonly name: string; readonly value: number; readonly quantity: Quantity; readonly verdict?: Verdict }
  | { readonly name: string; readonly said: string };

export interface Figure {
  readonly line: Line;
  readonly rule: Rule;
}

export type Answer = { readonly ok: true; readonly figures: readonly Figure[] } | Failure;

export const amount = (name: string, value: number, quantity: Quantity): Line => ({ name, value, quantity });
export const said = (name: string, words: string): Line => ({ name, said: words });
export const held = (name: string, verdict: Verdict, quantity: Quantity): Line => ({
  name,
  value: verdict.value,
  quantity,
  verdict,
});

/** A time with its interval, as up to three lines. */
export const estimated = (name: string, { bestS, lowS, highS }: TimeEstimate): readonly Line[] => [
  amount(name, bestS, 'seconds'),
  amount(`${name}, earliest`, lowS, 'seconds'),
  highS === undefined
    ? said(`${name}, latest`, 'cannot be told yet')
    : amount(`${name}, latest`, highS, 'seconds'),
];

/** The lines of a result under its rule, or its issue. */
export function answer<T>(result: Result<T>, lines: (value: T) => readonly Line[]): Answer {
  if (!result.ok) return result;
  const { rule } = result;
  return { ok: true, figures: lines(result.value).map(line => ({ line, rule })) };
}

/** The same result; an issue with one item of a list (`oils[0].grade`) names the input that the list came from. */
export function fromList<T>(result: Result<T>, key: string): Result<T> {
  if (result.ok || !result.issue.input.includes('[')) return result;
  return { ok: false, issue: { ...result.issue, input: key } };
}

/** Several answers as one; the first issue goes before all. */
export function together(...answers: readonly Answer[]): Answer {
  const figures: Figure[] = [];
  for (const each of answers) {
    if (!each.ok) return each;
    figures.push(...each.figures);
  }
  return { ok: true, figures };
}
