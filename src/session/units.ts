import { type Quantity, quantityUnits, type SiUnit } from '../../machines/vocabulary.ts';
import type { UnitId } from '../../prompts/types.ts';
import { type UserUnit as Converted, conversionOf } from '../engineering/units.ts';

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

const as = (id: UnitId & Converted, decimals: number): UserUnit => {
  const { scale, offset } = conversionOf(id);
  return { id, scale, offset, decimals };
};

const same = (id: UnitId, decimals: number): UserUnit => ({ id, scale: 1, offset: 0, decimals });

/** As it is shown: fuel is bought by the gallon where oil is filled by the quart. */
export type ShownUnit = SiUnit | 'litreOfFuel';

/** The unit in which a quantity is shown, spoken and listened for; the record keeps SI. */
export const shownUnit = (quantity: Quantity): ShownUnit =>
  quantity === 'fuelInTank' ? 'litreOfFuel' : quantityUnits[quantity];

const metric: Record<ShownUnit, UserUnit> = {
  degC: as('degC', 0),
  m: as('m', 0),
  litre: as('litre', 1),
  litreOfFuel: as('litre', 1),
  '%': same('%', 0),
  count: same('count', 0),
  V: same('V', 1),
  rpm: same('rpm', 0),
  kPa: as('bar', 1),
  s: same('s', 0),
};

const us: Record<ShownUnit, UserUnit> = {
  ...metric,
  degC: as('degF', 0),
  m: as('ft', 0),
  litre: as('usQuart', 1),
  litreOfFuel: as('usGallon', 1),
  kPa: as('psi', 0),
};

export const userUnit = (system: UnitSystem, si: ShownUnit): UserUnit => (system === 'us' ? us : metric)[si];

export const toUser = (unit: UserUnit, si: number): number => si * unit.scale + unit.offset;

export const fromUser = (unit: UserUnit, value: number): number => (value - unit.offset) / unit.scale;

/** The unit behind a verdict's unit name; null for pure numbers and for what is never spoken. */
export const asShownUnit = (name: string): ShownUnit | null =>
  name in metric ? (name as keyof typeof metric) : null;
