import type { Farthest } from './en/in-noise.ts';
import type { english } from './en/index.ts';

export type { Farthest };

export type StepId = keyof typeof english.steps;
export type ReplyId = keyof typeof english.replies;
export type ControlId = keyof typeof english.controls;
export type LineId = keyof typeof english.lines;
export type PhaseId = keyof typeof english.phases;
export type GroupId = keyof typeof english.groups;
export type UnitId = keyof typeof english.units;

/** The same keys as English with other words: what a language has to bring. */
type Worded<T> = T extends string
  ? string
  : T extends readonly (infer Item)[]
    ? readonly Worded<Item>[]
    : { readonly [Key in keyof T]: Worded<T[Key]> };

/**
 * Sentences that are English where the program makes them, in another language: `{}` stands for what is put in as it
 * comes, `{words}` for a part that is worded in turn. What stands nowhere in it is told in English.
 */
export type BySentence = Readonly<Record<string, string>>;

/** The languages there are; each is data in a folder of this name. */
export type LanguageCode = 'en' | 'fr' | 'es';

export interface Language
  extends Omit<Worded<typeof english>, 'code' | 'usualUnits' | 'farthest' | 'bySentence'> {
  readonly code: LanguageCode;
  /** The units that are meant where none are asked for. */
  readonly usualUnits: 'us' | 'metric';
  /** What is asked for in a loud bay, where it is not the first wording. */
  readonly farthest: Farthest;
  /** What the interview of a new engine asks, offers and refuses, and what is wrong with a file that was brought. */
  readonly bySentence: BySentence;
}
