import type { ValueField } from '../../profile/fields.ts';
import {
  type Draft,
  type NumberQuestion,
  numberIn,
  type Question,
  type QuestionId,
  textIn,
  type Value,
} from '../question.ts';
import { type Measure, showNumber, type UnitChoice, unitChoices } from '../units.ts';

const PRACTICE = 'common practice, no published source';

export const assumed = (value: Value, rule = PRACTICE) => ({ value, from: 'assumed', rule }) as const;
export const always = (value: Value, rule?: string) => () => assumed(value, rule);
export const computed = (value: Value, rule: string, uses: readonly QuestionId[]) =>
  ({ value, from: 'computed', rule, uses }) as const;

export const clamp = (value: number, min: number, max: number) => Math.min(max, Math.max(min, value));
export const downToTenths = (value: number) => Math.floor(value * 10) / 10;
/** To two figures, as nobody guesses finer. */
export const rough = (value: number) => Number(value.toPrecision(2));

type NumberRest = Omit<
  NumberQuestion,
  'kind' | 'id' | 'ask' | 'measure' | 'min' | 'max' | 'fields' | 'tier'
> & {
  readonly fields?: readonly ValueField[];
  readonly tier?: NumberQuestion['tier'];
};

/** A number that is a value of the profile itself. */
export const number = (
  id: ValueField,
  ask: string,
  measure: Measure,
  [min, max]: readonly [number, number],
  { fields = [id], tier = 'manual', ...rest }: NumberRest = {},
): NumberQuestion => ({ kind: 'number', id, ask, measure, min, max, fields, tier, ...rest });

/** A figure of a calculation, or a margin of the trade, that hardly anybody looks up. */
export const rest = (
  id: ValueField,
  measure: Measure,
  bounds: readonly [number, number],
  propose: NonNullable<Question['propose']>,
  more: NumberRest = {},
): NumberQuestion => number(id, '', measure, bounds, { tier: 'rest', propose, ...more });

export const unitsIn = (draft: Draft): UnitChoice =>
  unitChoices.find(choice => choice === textIn(draft, 'units')) ?? 'metric';

/** A fault unless the value is on the right side of another. */
export const over =
  (other: QuestionId, named: string, measure: Measure, by = 0) =>
  (value: Value, draft: Draft): string | null => {
    const least = numberIn(draft, other);
    if (least === undefined || typeof value !== 'number' || value > least + by) return null;
    return `It has to be above ${showNumber(least + by, measure, unitsIn(draft))}, as ${named} is ${showNumber(least, measure, unitsIn(draft))}.`;
  };

/** What an engine of this size holds: outside it, two figures were mixed up, or their units. */
export const perLitre =
  (least: number, most: number, what: string) =>
  (value: Value, draft: Draft): string | null => {
    const size = numberIn(draft, 'engine.displacementL');
    if (size === undefined || typeof value !== 'number') return null;
    if (value >= least * size && value <= most * size) return null;
    const show = (si: number) => showNumber(si, 'volume', unitsIn(draft));
    return `${what} of an engine of ${showNumber(size, 'displacement', unitsIn(draft))} has to be from ${show(least * size)} to ${show(most * size)}.`;
  };

export const bars = (kpa: number, draft: Draft) => showNumber(kpa, 'pressure', unitsIn(draft));

export const isFixed = (draft: Draft) => draft.fixedSpeedRpm === true;
export const isSwept = (draft: Draft) => !isFixed(draft);

/** The usual figure, or so much above another where that is higher. */
export const atLeast = (usual: number, other: QuestionId, above: number) => (draft: Draft) =>
  assumed(Math.max(usual, (numberIn(draft, other) ?? Number.NEGATIVE_INFINITY) + above));

export const electric = (draft: Draft) => textIn(draft, 'fuelling.disabledBy') === 'electric';
export const withHeater = (draft: Draft) => textIn(draft, 'heaterKind') !== 'none';
