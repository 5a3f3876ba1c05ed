import { languages } from '../../prompts/index.ts';
import { conversionOf, type UserUnit } from '../engineering/units.ts';

/** The units of a manual; a number without a unit is taken in them. */
export const unitChoices = ['metric', 'si', 'us'] as const;
export type UnitChoice = (typeof unitChoices)[number];

/** What a number of the interview measures. */
export type Measure =
  | 'volume'
  | 'tank'
  | 'displacement'
  | 'pressure'
  | 'temperature'
  | 'kelvin'
  | 'speed'
  | 'time'
  | 'voltage'
  | 'share'
  | 'viscosity'
  | 'percent'
  | 'ppm'
  | 'count';

interface Unit {
  /** As it is shown. */
  readonly label: string;
  /** As it may be typed, in lower case. */
  readonly typed: readonly string[];
  /** user = SI * scale + offset */
  readonly scale: number;
  readonly offset: number;
}

const known = (unit: UserUnit, label: string, ...typed: string[]): Unit => ({
  ...conversionOf(unit),
  label,
  typed,
});
const scaled = (si: number, label: string, ...typed: string[]): Unit => ({
  scale: 1 / si,
  offset: 0,
  label,
  typed,
});
const plain = (label: string, ...typed: string[]): Unit => scaled(1, label, ...typed);

const litre = known('litre', 'L', 'l', 'litre', 'litres', 'liter', 'liters');
const quart = known('usQuart', 'qt', 'qt', 'quart', 'quarts');
const gallon = known('usGallon', 'gal', 'gal', 'gallon', 'gallons');
// A cubic inch is 16.387 ml (NIST SP 811, appendix B.8).
const cubicInch = scaled(
  0.0254 ** 3 * 1000,
  'cu in',
  'cu in',
  'cuin',
  'in3',
  'ci',
  'cubic inch',
  'cubic inches',
);
const cubicCentimetre = scaled(0.001, 'cc', 'cc', 'cm3', 'ml');
const kpa = known('kPa', 'kPa', 'kpa');
const bar = known('bar', 'bar', 'bar');
const psi = known('psi', 'psi', 'psi', 'lb', 'pounds');
const celsius = known('degC', '°C', 'c', '°c', 'degc', 'celsius');
const fahrenheit = known('degF', '°F', 'f', '°f', 'degf', 'fahrenheit');
const kelvin = plain('K', 'k', 'kelvin');
/** A difference: it has no zero of its own. */
const fahrenheitStep = scaled(1 / 1.8, '°F', 'f', '°f', 'degf', 'fahrenheit');
const second = plain('s', 's', 'sec', 'second', 'seconds');
const minute = scaled(60, 'min', 'min', 'minute', 'minutes');
const rpm = plain('rpm', 'rpm', '1/min', 'r/min', 'u/min');

/** The first of each list is the usual one of these units. */
const unitsOf: Readonly<Record<Measure, Readonly<Record<UnitChoice, readonly Unit[]>>>> = {
  volume: each([litre, quart, gallon], [litre, quart, gallon], [quart, gallon, litre]),
  tank: each([litre, gallon], [litre, gallon], [gallon, litre]),
  displacement: each(
    [litre, cubicCentimetre, cubicInch],
    [litre, cubicCentimetre, cubicInch],
    [cubicInch, litre, cubicCentimetre],
  ),
  pressure: each([bar, kpa, psi], [kpa, bar, psi], [psi, bar, kpa]),
  temperature: each([celsius, fahrenheit], [celsius, fahrenheit], [fahrenheit, celsius]),
  kelvin: each([kelvin], [kelvin], [fahrenheitStep, kelvin]),
  speed: same(rpm),
  time: same(second, minute),
  voltage: same(plain('V', 'v', 'volt', 'volts')),
  share: same(scaled(0.01, '%', '%', 'percent')),
  viscosity: same(plain('mm2/s', 'mm2/s', 'cst')),
  percent: same(plain('%', '%', 'percent')),
  ppm: same(plain('ppm', 'ppm', 'mg/kg')),
  count: same(plain('', 'times', 'tries', 'cyl', 'cyls', 'cylinder', 'cylinders', 'strokes')),
};

function each(metric: readonly Unit[], si: readonly Unit[], us: readonly Unit[]) {
  return { metric, si, us };
}
function same(...units: readonly Unit[]) {
  return each(units, units, units);
}

const usual = (measure: Measure, choice: UnitChoice): Unit => {
  const [unit] = unitsOf[measure][choice];
  if (!unit) throw new Error(`${measure} has no unit.`);
  return unit;
};

/** The unit in which a number is asked for, as it is written; empty for bare numbers. */
export const unitLabel = (measure: Measure, choice: UnitChoice): string => usual(measure, choice).label;

/** To four figures at most: what a manual prints. A limit shown so may be typed as it is shown. */
const FIGURES = 4;
/** Of what was converted the fourth is nobody's. */
const FIGURES_CONVERTED = 3;

/** Without its unit, for the first of two. */
export const showBare = (si: number, measure: Measure, choice: UnitChoice, figures = FIGURES): string => {
  const { scale, offset } = usual(measure, choice);
  // What binary arithmetic leaves of 0 °F is nothing.
  return String(Number(Number((si * scale + offset).toFixed(9)).toPrecision(figures)));
};

/** A number in SI in the units of the manual, with its unit. */
export const showNumber = (si: number, measure: Measure, choice: UnitChoice, figures = FIGURES): string =>
  `${showBare(si, measure, choice, figures)} ${unitLabel(measure, choice)}`.trimEnd();

/** The same no finer than anybody means it: what is put forward, and what stands on a sheet. */
export const showRounded = (si: number, measure: Measure, choice: UnitChoice): string => {
  const { scale, offset } = usual(measure, choice);
  const converted = offset !== 0 || ![1, 0.01, 100].includes(scale);
  return showNumber(si, measure, choice, converted ? FIGURES_CONVERTED : FIGURES);
};

export type ReadNumber =
  | { readonly ok: true; readonly si: number; readonly rest: string }
  | { readonly ok: false; readonly sentence: string };

const THOUSANDS = /^[+-]?\d{1,3}(,\d{3})+(?!\d)/;
const NUMBER = /^[+-]?\d+(?:[.,]\d+)?/;

/**
 * A typed number with its unit, or without one in the usual one: `15`, `15 qt`, `1,5 bar`, `2,200 rpm`. A comma
 * before three digits is taken for thousands where the number counts turns or strokes, and asked about elsewhere.
 */
export function readNumber(text: string, measure: Measure, choice: UnitChoice): ReadNumber {
  const trimmed = text.trim();
  const thousands = THOUSANDS.exec(trimmed)?.[0];
  if (thousands !== undefined && measure !== 'speed' && measure !== 'count')
    return { ok: false, sentence: `${thousands} may mean two things; write it without the comma.` };
  const digits = thousands ?? NUMBER.exec(trimmed)?.[0];
  if (digits === undefined)
    return { ok: false, sentence: `"${trimmed}" is no number; write it in figures, such as ${exampleOf()}.` };
  const value = Number(thousands === undefined ? digits.replace(',', '.') : digits.replaceAll(',', ''));
  const rest = trimmed.slice(digits.length).trim();
  const units = unitsOf[measure][choice];
  const word = /^[^\d\s,;+-][^\d;+-]*(?:3|2\/s)?/u.exec(rest)?.[0].trim() ?? '';
  if (word === '' || word === '-') {
    const unit = usual(measure, choice);
    return { ok: true, si: (value - unit.offset) / unit.scale, rest };
  }
  const found = units
    .flatMap(unit => unit.typed.map(typed => ({ unit, typed })))
    .sort((one, other) => other.typed.length - one.typed.length)
    .find(({ typed }) => isWord(rest.toLowerCase(), typed));
  if (found)
    return {
      ok: true,
      si: (value - found.unit.offset) / found.unit.scale,
      rest: rest.slice(found.typed.length).trim(),
    };
  // A word between two numbers, as in "650 to 750", is no unit.
  if (TO.test(rest)) {
    const unit = usual(measure, choice);
    return { ok: true, si: (value - unit.offset) / unit.scale, rest };
  }
  const labels = units.map(({ label }) => label).filter(label => label !== '');
  return {
    ok: false,
    sentence:
      labels.length === 0
        ? `"${word}" is no unit here; give the bare number.`
        : `"${word}" is no unit here; allowed: ${labels.join(', ')}.`,
  };

  function exampleOf() {
    const { label } = usual(measure, choice);
    return label === '' ? '3' : `12 ${label}`;
  }
}

/** "to", in any language. */
const TO = new RegExp(
  `^(?:${Object.values(languages)
    .flatMap(({ typedWords }) => typedWords.to)
    .join('|')})(?=\\s)`,
  'i',
);

const isWord = (text: string, word: string) =>
  text.startsWith(word) && !/[a-z0-9]/.test(text.slice(word.length, word.length + 1));
