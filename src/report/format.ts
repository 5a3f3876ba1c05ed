import { isQuantity, quantityUnits } from '../engineering/quantities/table.ts';
import { asShownUnit, shownUnit, toUser, userUnit } from '../session/units.ts';
import { fill } from '../session/wording.ts';
import type { Manner } from './manner.ts';
import type { Limits, ReadingVerdict } from './model.ts';

/** Finer than what is said aloud, so that a reading just outside its limit does not look as if it met it. */
const DECIMALS: Readonly<Record<string, number>> = {
  degC: 1,
  degF: 1,
  litre: 2,
  usQuart: 2,
  usGallon: 2,
  V: 2,
  s: 1,
  bar: 2,
  psi: 1,
  '%': 1,
  kPa: 0,
};

const SECOND_MS = 1000;
const MINUTE_S = 60;
const HOUR_S = 3600;

const MINUS = '\u2212';

/** At most so many decimals, none for show, with a true minus sign and the decimal mark of the language. */
export function number(value: number, decimals: number, { language }: Manner): string {
  if (!Number.isFinite(value)) return '?';
  const rounded = Number(value.toFixed(decimals));
  const text = Math.abs(rounded) >= 1e9 ? rounded.toExponential(2) : String(rounded);
  return (Object.is(rounded, -0) ? '0' : text)
    .replaceAll('-', MINUS)
    .replace('.', language.words.decimalMark);
}

/** Session time: 4:09, or 1:04:09 from an hour on. */
export function time(ms: number): string {
  const seconds = Math.floor(ms / SECOND_MS);
  if (!Number.isFinite(seconds) || seconds > 1e9) return '?';
  const two = (value: number) => String(value).padStart(2, '0');
  const minutes = Math.floor(seconds / MINUTE_S);
  return seconds < HOUR_S
    ? `${minutes}:${two(seconds % MINUTE_S)}`
    : `${Math.floor(seconds / HOUR_S)}:${two(minutes % MINUTE_S)}:${two(seconds % MINUTE_S)}`;
}

/** A length of time in words: 4 s, 12 min, 1 h 04 min. */
export function duration(ms: number, manner: Manner): string {
  const { unitGap } = manner.words;
  const seconds = Math.round(ms / SECOND_MS);
  if (!Number.isFinite(seconds) || seconds > 1e9) return '?';
  if (seconds < 2 * MINUTE_S)
    return `${number(ms / SECOND_MS, ms < 10 * SECOND_MS ? 1 : 0, manner)}${unitGap}s`;
  const minutes = Math.round(seconds / MINUTE_S);
  if (minutes < MINUTE_S) return `${minutes}${unitGap}min`;
  const rest = String(minutes % MINUTE_S).padStart(2, '0');
  return `${Math.floor(minutes / MINUTE_S)}${unitGap}h ${rest}${unitGap}min`;
}

/** 2 January 2026, 03:04 UTC. */
export function dateTime(at: string, { words }: Manner): string {
  const date = new Date(at);
  if (Number.isNaN(date.getTime())) return at;
  const format = new Intl.DateTimeFormat(words.locale, {
    day: 'numeric',
    month: 'long',
    year: 'numeric',
    timeZone: 'UTC',
  });
  const parts = format
    .formatToParts(date)
    .map(({ type, value }) => (type === 'day' && value === '1' ? words.firstOfMonth : value));
  return fill(words.dateTime, { date: parts.join(''), time: at.slice(11, 16) });
}

/** How values of one SI unit are shown: in the reader's unit, with its short name. */
interface Shown {
  readonly unit: string;
  toUser(si: number): number;
  value(si: number): string;
  /** A difference of two values. */
  difference(si: number): string;
}

/** @param quantity of which it is, where that is known: fuel is not shown in the unit of oil */
export function shownAs(unit: string, manner: Manner, quantity = ''): Shown {
  const text = (value: number, decimals: number, name: string) =>
    [number(value, decimals, manner), name].filter(part => part !== '').join(manner.words.unitGap);
  const siUnit =
    isQuantity(quantity) && unit === quantityUnits[quantity] ? shownUnit(quantity) : asSiUnitSafely(unit);
  if (siUnit === null)
    return {
      unit,
      toUser: si => si,
      value: si => text(si, 3, unit),
      difference: si => text(si, 3, unit),
    };
  const user = userUnit(manner.units, siUnit);
  const name = manner.language.units[user.id].short;
  const decimals = DECIMALS[user.id] ?? user.decimals;
  return {
    unit: name,
    toUser: si => toUser(user, si),
    value: si => text(toUser(user, si), decimals, name),
    difference: si => text(si * user.scale, decimals, name),
  };
}

/** Unit names from outside must not reach what every object inherits. */
const asSiUnitSafely = (unit: string) => (unit in Object.prototype ? null : asShownUnit(unit));

export function limits({ min, max }: Limits, shown: Shown, { words }: Manner): string {
  if (min !== undefined && max !== undefined)
    return fill(words.between, { min: shown.value(min), max: shown.value(max) });
  if (min !== undefined) return fill(words.atLeast, { value: shown.value(min) });
  if (max !== undefined) return fill(words.atMost, { value: shown.value(max) });
  return '\u2013';
}

/** The margin in words: to spare, or on which side of its limits the value lies, however little rounding leaves of it. */
export function margin({ value, verdict }: Held, shown: Shown, { words }: Manner): string {
  const { margins } = words;
  const { margin: left, min, max } = verdict;
  if (left === undefined || !Number.isFinite(left)) return '\u2013';
  if (left === 0) return margins.onLimit;
  const text = shown.difference(Math.abs(left));
  const isHidden = /^0\b(?![.,])/.test(text);
  const amount = isHidden ? margins.hardly : text;
  if (left > 0) return fill(margins.toSpare, { amount });
  const low = min !== undefined && value < min;
  const high = max !== undefined && value > max;
  return fill(low ? margins.tooLow : high ? margins.tooHigh : margins.beyond, { amount });
}

/** What is held against limits. */
interface Held {
  readonly value: number;
  readonly verdict: ReadingVerdict;
}
