import type { SiUnit } from '../../machines/vocabulary.ts';
import type { UnitId } from '../../prompts/types.ts';

/** The two sets of units that a user may choose between; inside, everything is SI. */
export type UnitSystem = 'metric' | 'us';

export const unitSystems: readonly UnitSystem[] = ['metric', 'us'];

export interface UserUnit {
  readonly id: UnitId;
  /** user = si * scale + offset */
  readonly scale: number;
  readonly offset: number;
  /** Decimal places that are worth saying. */
  readonly decimals: number;
}

const same = (id: UnitId, decimals: number): UserUnit => ({ id, scale: 1, offset: 0, decimals });

/** Factors: NIST SP 811, appendix B (psi, foot, US quart; from memory). */
const metric: Record<SiUnit, UserUnit> = {
  degC: same('degC', 0),
  m: same('m', 0),
  litre: same('litre', 1),
  '%': same('%', 0),
  count: same('count', 0),
  V: same('V', 1),
  rpm: same('rpm', 0),
  kPa: { id: 'bar', scale: 0.01, offset: 0, decimals: 1 },
  s: same('s', 0),
};

const us: Record<SiUnit, UserUnit> = {
  ...metric,
  degC: { id: 'degF', scale: 1.8, offset: 32, decimals: 0 },
  m: { id: 'ft', scale: 1 / 0.3048, offset: 0, decimals: 0 },
  litre: { id: 'usQuart', scale: 1 / 0.946352946, offset: 0, decimals: 1 },
  kPa: { id: 'psi', scale: 1 / 6.894757293, offset: 0, decimals: 0 },
};

export const userUnit = (system: UnitSystem, si: SiUnit): UserUnit => (system === 'us' ? us : metric)[si];

export const toUser = (unit: UserUnit, si: number): number => si * unit.scale + unit.offset;

export const fromUser = (unit: UserUnit, value: number): number => (value - unit.offset) / unit.scale;

/** The unit behind a verdict's unit name; null for pure numbers and for what is never spoken. */
export const asSiUnit = (name: string): SiUnit | null =>
  name in metric ? (name as keyof typeof metric) : null;
