import { type Quantity, shown, type UnitSystem, unitLabel } from './quantities.ts';
import type { Figure, Line } from './subject.ts';

/** What is left of a limit is a difference: 5 K less is 9 °F less, not 41 °F. */
const DIFFERENCE: Partial<Record<Quantity, Quantity>> = { temperature: 'temperatureDifference' };

const rounded = (value: number): number =>
  Math.abs(value) >= 1000 ? Math.round(value) : Number(value.toPrecision(4));

const inUnit = (value: number, unit: string): string => `${rounded(value)} ${unit}`.trimEnd();

interface ShownLine {
  readonly name: string;
  readonly value: number | string;
  readonly unit?: string;
  readonly limit?: { readonly min?: number; readonly max?: number };
  readonly margin?: number;
  readonly marginUnit?: string;
  readonly met?: boolean;
}

function inUserUnits(line: Line, system: UnitSystem): ShownLine {
  if ('said' in line) return { name: line.name, value: line.said };
  const { name, quantity, verdict } = line;
  const at = (valueSi: number): number => shown(valueSi, quantity, system);
  const value = at(line.value);
  const unit = unitLabel(quantity, system);
  if (!verdict) return { name, value, unit };
  const apart = DIFFERENCE[quantity] ?? quantity;
  return {
    name,
    value,
    unit,
    limit: {
      ...(verdict.min !== undefined && { min: at(verdict.min) }),
      ...(verdict.max !== undefined && { max: at(verdict.max) }),
    },
    margin: shown(verdict.margin, apart, system),
    marginUnit: unitLabel(apart, system),
    met: verdict.met,
  };
}

/** For programs: every figure with its unit, limit, margin, rule and source, unrounded. */
export function asJson(subject: string, figures: readonly Figure[], system: UnitSystem): string {
  const results = figures.map(({ line, rule }) => ({
    ...inUserUnits(line, system),
    rule: rule.id,
    source: rule.source,
    validity: rule.validity,
  }));
  return JSON.stringify({ subject, results }, undefined, 2);
}

/** For people: a line for each figure, rounded, and the rules they come from below. */
export function asText(figures: readonly Figure[], system: UnitSystem): string {
  const lines = figures.map(({ line }) => textOf(inUserUnits(line, system)));
  const rules = new Map(figures.map(({ rule }) => [rule.id, rule]));
  const sources = [...rules.values()].map(
    rule => `  ${rule.id}: ${rule.source}\n    holds for: ${rule.validity}`,
  );
  return [...lines, '', 'By:', ...sources].join('\n');
}

function textOf({ name, value, unit = '', limit, margin, marginUnit = '', met }: ShownLine): string {
  if (typeof value === 'string') return `${name}: ${value}`;
  if (!limit || margin === undefined) return `${name}: ${inUnit(value, unit)}`;
  const bounds = [
    ...(limit.min === undefined ? [] : [`at least ${inUnit(limit.min, unit)}`]),
    ...(limit.max === undefined ? [] : [`at most ${inUnit(limit.max, unit)}`]),
  ];
  const judged = `${bounds.join(' and ')}, margin ${inUnit(margin, marginUnit)}`;
  return `${name}: ${inUnit(value, unit)}, ${met ? 'OK' : 'NOT OK'} (${judged})`;
}
