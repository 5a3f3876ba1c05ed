import { okWithin } from './checks.ts';
import type { Result, Rule } from './result.ts';

const RULE: Rule = {
  id: 'unit-conversion',
  source:
    'NIST SP 811 (2008), appendix B.8: degree Fahrenheit, pound-force per square inch, bar, US liquid quart',
  validity: 'any finite value; temperatures from absolute zero up',
};

/** The units a person may speak or read; calculations only ever see the SI side. */
export type UserUnit = 'degC' | 'degF' | 'kPa' | 'bar' | 'psi' | 'litre' | 'usQuart';
export type SiUnit = 'degC' | 'kPa' | 'litre';

interface Conversion {
  readonly si: SiUnit;
  /** SI = (user + offset) * factor */
  readonly factor: number;
  readonly offset: number;
}

// A pound-force is 0.45359237 kg x 9.80665 m/s2, an inch 25.4 mm, a US liquid quart 231/4 cubic inches.
const KPA_PER_PSI = (0.45359237 * 9.80665) / 0.0254 ** 2 / 1000;
const LITRES_PER_US_QUART = (231 / 4) * 0.254 ** 3;

const CONVERSIONS: Readonly<Record<UserUnit, Conversion>> = {
  degC: { si: 'degC', factor: 1, offset: 0 },
  degF: { si: 'degC', factor: 5 / 9, offset: -32 },
  kPa: { si: 'kPa', factor: 1, offset: 0 },
  bar: { si: 'kPa', factor: 100, offset: 0 },
  psi: { si: 'kPa', factor: KPA_PER_PSI, offset: 0 },
  litre: { si: 'litre', factor: 1, offset: 0 },
  usQuart: { si: 'litre', factor: LITRES_PER_US_QUART, offset: 0 },
};

/** Every unit that can be converted. */
export const USER_UNITS: readonly UserUnit[] = ['degC', 'degF', 'kPa', 'bar', 'psi', 'litre', 'usQuart'];

/** The SI unit that a user unit is kept in: degC, kPa or litre. */
export const siUnitOf = (unit: UserUnit): SiUnit => CONVERSIONS[unit].si;

const lowest = (si: SiUnit): number => (si === 'degC' ? -273.15 : -Number.MAX_VALUE);

/**
 * A value spoken in `unit`, in the SI unit of `siUnitOf(unit)`.
 * Refused: NaN, infinities, overflow, temperatures below absolute zero. Source: NIST SP 811.
 */
export function toSi(value: number, unit: UserUnit): Result<number> {
  const { si, factor, offset } = CONVERSIONS[unit];
  return okWithin(
    (value + offset) * factor,
    { min: lowest(si), max: Number.MAX_VALUE, unit: si },
    RULE,
    unit,
  );
}

/**
 * An SI value (degC, kPa or litre) in the user's `unit`.
 * Refused: NaN, infinities, overflow, temperatures below absolute zero. Source: NIST SP 811.
 */
export function fromSi(valueSi: number, unit: UserUnit): Result<number> {
  const { si, factor, offset } = CONVERSIONS[unit];
  const range = { min: lowest(si), max: Number.MAX_VALUE, unit: si };
  const given = okWithin(valueSi, range, RULE, si);
  return given.ok
    ? okWithin(valueSi / factor - offset, { min: -Number.MAX_VALUE, max: Number.MAX_VALUE, unit }, RULE, si)
    : given;
}
