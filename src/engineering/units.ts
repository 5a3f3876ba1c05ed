import { okWithin } from './checks.ts';
import type { Result, Rule } from './result.ts';

const RULE: Rule = {
  id: 'unit-conversion',
  source:
    'NIST SP 811 (2008), appendix B.8: degree Fahrenheit, foot, pound-force per square inch, bar, US liquid quart and gallon',
  validity: 'any finite value; temperatures from absolute zero up',
};

/** The units a person may speak or read; calculations only ever see the SI side. */
export type UserUnit =
  | 'degC'
  | 'degF'
  | 'm'
  | 'ft'
  | 'kPa'
  | 'bar'
  | 'psi'
  | 'litre'
  | 'usQuart'
  | 'usGallon';
type SiUnit = 'degC' | 'm' | 'kPa' | 'litre';

interface Conversion {
  readonly si: SiUnit;
  /** user = SI * scale + offset */
  readonly scale: number;
  readonly offset: number;
}

// A pound-force is 0.45359237 kg x 9.80665 m/s2, an inch 25.4 mm, a US liquid quart 231/4 cubic inches.
const KPA_PER_PSI = (0.45359237 * 9.80665) / 0.0254 ** 2 / 1000;
const LITRES_PER_US_QUART = (231 / 4) * 0.254 ** 3;
const QUARTS_PER_GALLON = 4;
const METRES_PER_FOOT = 0.3048;

const CONVERSIONS: Readonly<Record<UserUnit, Conversion>> = {
  degC: { si: 'degC', scale: 1, offset: 0 },
  degF: { si: 'degC', scale: 1.8, offset: 32 },
  m: { si: 'm', scale: 1, offset: 0 },
  ft: { si: 'm', scale: 1 / METRES_PER_FOOT, offset: 0 },
  kPa: { si: 'kPa', scale: 1, offset: 0 },
  bar: { si: 'kPa', scale: 0.01, offset: 0 },
  psi: { si: 'kPa', scale: 1 / KPA_PER_PSI, offset: 0 },
  litre: { si: 'litre', scale: 1, offset: 0 },
  usQuart: { si: 'litre', scale: 1 / LITRES_PER_US_QUART, offset: 0 },
  usGallon: { si: 'litre', scale: 1 / (QUARTS_PER_GALLON * LITRES_PER_US_QUART), offset: 0 },
};

/** How a unit is made into SI, for tables; no range is looked at. Source: NIST SP 811. */
export const conversionOf = (unit: UserUnit): Conversion => CONVERSIONS[unit];

/** Every unit that a person may mean by a quantity of this SI unit, that one too. */
export const unitsOf = (unit: SiUnit): readonly UserUnit[] =>
  (Object.keys(CONVERSIONS) as UserUnit[]).filter(each => CONVERSIONS[each].si === unit);

/** Whether an SI unit is spoken in several. */
export const isConverted = (unit: string): unit is SiUnit =>
  Object.values(CONVERSIONS).some(({ si }) => si === unit);

/** 0 degC in kelvin. */
export const ZERO_C_K = 273.15;

const lowest = (si: SiUnit): number => (si === 'degC' ? -ZERO_C_K : -Number.MAX_VALUE);

/**
 * A value spoken in `unit`, in the SI unit of its `conversionOf(unit)`.
 * Refused: NaN, infinities, overflow, temperatures below absolute zero. Source: NIST SP 811.
 */
export function toSi(value: number, unit: UserUnit): Result<number> {
  const { si, scale, offset } = CONVERSIONS[unit];
  return okWithin((value - offset) / scale, { min: lowest(si), max: Number.MAX_VALUE, unit: si }, RULE, unit);
}

/**
 * An SI value (degC, m, kPa or litre) in the user's `unit`.
 * Refused: NaN, infinities, overflow, temperatures below absolute zero. Source: NIST SP 811.
 */
export function fromSi(valueSi: number, unit: UserUnit): Result<number> {
  const { si, scale, offset } = CONVERSIONS[unit];
  const range = { min: lowest(si), max: Number.MAX_VALUE, unit: si };
  const given = okWithin(valueSi, range, RULE, si);
  return given.ok
    ? okWithin(valueSi * scale + offset, { min: -Number.MAX_VALUE, max: Number.MAX_VALUE, unit }, RULE, si)
    : given;
}
