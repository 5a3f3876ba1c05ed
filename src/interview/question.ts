import type { ValueField } from '../profile/fields.ts';
import type { Measure } from './units.ts';

/** Questions that settle a part of a value, or more than one, or nothing of the profile but what others hang on. */
export type ExtraId =
  | 'units'
  | 'name'
  | 'real'
  | 'autoStart'
  | 'breaker'
  | 'gearLever'
  | 'coupling'
  | 'rawWaterCock'
  | 'fixedRange'
  | 'ratedRpm'
  | 'highIdleRpm'
  | 'coolantMix'
  | 'filterCount'
  | 'firstFilter'
  | 'secondFilter'
  | 'heaterKind'
  | 'heaterWaitS'
  | 'heaterWaitAtC'
  | 'floorIdleKpa'
  | 'floorRatedKpa'
  | 'busReadings'
  | 'busAddress';

export type QuestionId = ValueField | ExtraId;

export interface OilAnswer {
  readonly grade: string;
  readonly viscosity40Mm2S: number;
  readonly viscosity100Mm2S: number;
  /** Coldest nights for which the maker allows it, degC. */
  readonly nightsFromC?: number | undefined;
  readonly nightsToC?: number | undefined;
}

/** What a question is answered with, in SI. `null` where there is none of it. */
export type Value =
  | number
  | string
  | boolean
  | null
  | readonly [number, number]
  | readonly string[]
  | readonly OilAnswer[];

/** What is known so far, by question. */
export type Draft = Readonly<Partial<Record<QuestionId, Value>>>;

export const numberIn = (draft: Draft, id: QuestionId): number | undefined => {
  const value = draft[id];
  return typeof value === 'number' ? value : undefined;
};
export const textIn = (draft: Draft, id: QuestionId): string | undefined => {
  const value = draft[id];
  return typeof value === 'string' ? value : undefined;
};
const isPair = (value: unknown): value is readonly [number, number] =>
  Array.isArray(value) && value.length === 2 && value.every(each => typeof each === 'number');
export const rangeIn = (draft: Draft, id: QuestionId): readonly [number, number] | undefined => {
  const value = draft[id];
  return isPair(value) ? value : undefined;
};

export const gradesIn = (draft: Draft): readonly OilAnswer[] => {
  const value = draft['oil.grades'];
  return Array.isArray(value) ? value.filter((each): each is OilAnswer => typeof each === 'object') : [];
};

/** What is put forward where nobody knows better. */
export interface Proposal {
  readonly value: Value;
  readonly from: 'computed' | 'assumed';
  /** The rule by which, or why it is cautious. */
  readonly rule: string;
  /** What it was worked out from: where one of these is assumed, so is it. */
  readonly uses?: readonly QuestionId[];
}

/** When it is asked: from the plate, from the manual, or only where everything is asked for. */
export type Tier = 'plate' | 'manual' | 'rest';

interface Common {
  readonly id: QuestionId;
  /** What is asked for, in a few words. */
  readonly ask: string;
  /** The values of the profile that it settles, whole or in part. */
  readonly fields: readonly ValueField[];
  readonly tier: Tier;
  /** It is left out, and its value too, where this is false. */
  readonly when?: (draft: Draft) => boolean;
  readonly propose?: (draft: Draft) => Proposal | undefined;
  /** What is wrong with a value beside what is known already, as a sentence with what is allowed; else null. */
  readonly check?: (value: Value, draft: Draft) => string | null;
  /** Where an answer comes from that does not say so, where that is neither the plate nor the manual. */
  readonly usual?: 'seen';
  /** In place of the words of the catalogue. */
  readonly why?: string;
  readonly where?: string;
}

export interface NumberQuestion extends Common {
  readonly kind: 'number' | 'range';
  readonly measure: Measure;
  /** Allowed, in SI, both included. */
  readonly min: number;
  readonly max: number;
  readonly whole?: boolean;
  /** Two usual numbers, where two are asked for. */
  readonly example?: readonly [number, number];
  /** Why no more and no less is allowed, in a few words; where it is told. */
  readonly because?: string;
}

export interface ChoiceQuestion extends Common {
  readonly kind: 'choice';
  /** What may be chosen, with how it is said. */
  readonly choices: Readonly<Record<string, string>>;
}

export interface YesNoQuestion extends Common {
  readonly kind: 'yesNo';
}

export interface WordsQuestion extends Common {
  readonly kind: 'words';
  readonly longest: number;
  /** "none" is an answer. */
  readonly orNone?: boolean;
}

export interface NamesQuestion extends Common {
  readonly kind: 'names';
}

export interface GradesQuestion extends Common {
  readonly kind: 'grades';
}

export type Question =
  | NumberQuestion
  | ChoiceQuestion
  | YesNoQuestion
  | WordsQuestion
  | NamesQuestion
  | GradesQuestion;
