import { z } from 'zod';
import type { Result } from '../../engineering/result.ts';
import { conversionOf, fromSi, toSi, type UserUnit } from '../../engineering/units.ts';
import { UsageError } from './usage-error.ts';

export type UnitSystem = 'metric' | 'us';

/** A unit as it is typed after a number and shown after a value, with the way to SI and back. */
interface Unit {
  readonly label: string;
  readonly typed: readonly string[];
  /** `undefined` for what cannot be, such as a temperature below absolute zero. */
  readonly toSi: (value: number) => number | undefined;
  readonly fromSi: (value: number) => number;
}

export type Quantity = keyof typeof QUANTITIES;

const same = (value: number): number => value;
const plain = (
  label: string,
): { readonly metric: Unit; readonly us: Unit; readonly all: readonly Unit[] } => {
  const unit: Unit = { label, typed: label === '' ? [] : [label], toSi: same, fromSi: same };
  return { metric: unit, us: unit, all: [unit] };
};

const converted = (label: string, unit: UserUnit, ...typed: readonly string[]): Unit => ({
  label,
  typed,
  toSi: value => valueOr(toSi(value, unit), undefined),
  fromSi: value => valueOr(fromSi(value, unit), Number.NaN),
});

const valueOr = <T>(result: Result<number>, otherwise: T): number | T =>
  result.ok ? result.value : otherwise;

const scaled = (label: string, factor: number, ...typed: readonly string[]): Unit => ({
  label,
  typed,
  toSi: value => value * factor,
  fromSi: value => value / factor,
});

const choice = (metric: Unit, us: Unit, ...others: readonly Unit[]) => ({
  metric,
  us,
  all: [metric, us, ...others],
});

const QUANTITIES = {
  temperature: choice(converted('°C', 'degC', 'c', '°c', 'degc'), converted('°F', 'degF', 'f', '°f', 'degf')),
  temperatureDifference: choice(
    scaled('K', 1, 'k', 'c', '°c'),
    scaled('°F', 1 / conversionOf('degF').scale, 'f', '°f'),
  ),
  pressure: choice(
    converted('kPa', 'kPa', 'kpa'),
    converted('psi', 'psi', 'psi'),
    converted('bar', 'bar', 'bar'),
  ),
  volume: choice(
    converted('litres', 'litre', 'l', 'litre', 'litres'),
    converted('US quarts', 'usQuart', 'qt', 'quart', 'quarts'),
  ),
  height: choice(converted('m', 'm', 'm'), converted('ft', 'ft', 'ft')),
  seconds: plain('s'),
  speed: plain('rpm'),
  voltage: plain('V'),
  viscosity: plain('mm2/s'),
  number: plain(''),
};

/** The unit in which a quantity is shown, and taken when none is typed. */
export const unitLabel = (quantity: Quantity, system: UnitSystem): string =>
  QUANTITIES[quantity][system].label;

/** Every unit that may be typed after a number. */
export const typedUnits = (quantity: Quantity): string =>
  QUANTITIES[quantity].all
    .map(({ label }) => label)
    .filter(label => label !== '')
    .join(', ');

/** An SI value in the user's unit. */
export const shown = (valueSi: number, quantity: Quantity, system: UnitSystem): number =>
  QUANTITIES[quantity][system].fromSi(valueSi);

const NUMBER_AND_UNIT = z
  .string()
  .trim()
  .regex(/^[+-]?(?:\d+\.?\d*|\.\d+)(?:\s*[a-z°][a-z0-9°/]*)?$/i)
  .transform(text => {
    const number = /^[+-]?[\d.]+/.exec(text)?.[0] ?? '';
    return { value: z.coerce.number().parse(number), unit: text.slice(number.length).trim().toLowerCase() };
  });

/**
 * A number as typed ("92", "198F", "2.5 bar"), in SI. `where` names its place for the error: `--coolant`,
 * `line 3`.
 */
export function parseQuantity(text: string, quantity: Quantity, system: UnitSystem, where: string): number {
  const { [system]: usual, all } = QUANTITIES[quantity];
  const parsed = NUMBER_AND_UNIT.safeParse(text);
  const example = usual.label === '' ? 'a number such as 12.5' : `a number in ${usual.label}`;
  if (!parsed.success) throw new UsageError(`${where} has to be ${example}, not "${text}".`);
  const { value, unit: typed } = parsed.data;
  const unit = typed === '' ? usual : all.find(each => each.typed.some(name => name.toLowerCase() === typed));
  if (!unit) {
    const units = typedUnits(quantity);
    throw new UsageError(
      `${where} has to be ${example}, not "${text}"${units === '' ? '' : `; units: ${units}`}.`,
    );
  }
  const valueSi = unit.toSi(value);
  if (valueSi === undefined)
    throw new UsageError(`${where} has to be ${example} that can be, not "${text}".`);
  return valueSi;
}
