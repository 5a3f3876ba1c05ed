import type { Language } from '../../../prompts/types.ts';
import { isQuantity, type Quantity, quantityUnits } from '../../engineering/quantities/table.ts';
import type { Data } from '../../record/vocabulary/index.ts';
import { toUser, type UnitSystem, userUnit } from '../../session/units.ts';

export interface PlotPoint {
  readonly atMs: number;
  /** In the user's unit, as the limits are. */
  readonly value: number;
  readonly met: boolean;
  /** What it was held against then. */
  readonly min: number | null;
  readonly max: number | null;
}

/** The readings of one quantity in the order they were taken, each with its limits. */
export interface Plot {
  readonly quantity: Quantity;
  readonly name: string;
  readonly unit: string;
  readonly decimals: number;
  readonly points: readonly PlotPoint[];
}

/** What a gauge shows over time; the rest are single figures. */
const plotted: readonly Quantity[] = [
  'oilPressure',
  'coolantTemperature',
  'engineSpeed',
  'chargingVoltage',
  'batteryVoltage',
];

/** Collects the judged readings of a session, from whoever tells of them. */
export class PlotBook {
  readonly #language: Language;
  readonly #units: UnitSystem;
  readonly #plots = new Map<Quantity, Plot>();

  constructor(language: Language, units: UnitSystem) {
    this.#language = language;
    this.#units = units;
  }

  /** Takes a reading that was judged; one of a quantity that is not known here is left out. */
  take({ quantity, value, met, min, max }: Data<'verdict'>, atMs: number): void {
    if (quantity == null || value == null || !isQuantity(quantity)) return;
    const unit = userUnit(this.#units, quantityUnits[quantity]);
    const shown = (si: number) => toUser(unit, si);
    this.#plots.set(quantity, {
      quantity,
      name: this.#language.quantities[quantity].name,
      unit: this.#language.units[unit.id].short,
      decimals: unit.decimals,
      points: [
        ...(this.#plots.get(quantity)?.points ?? []),
        {
          atMs,
          value: shown(value),
          met,
          min: min == null ? null : shown(min),
          max: max == null ? null : shown(max),
        },
      ],
    });
  }

  plots(): readonly Plot[] {
    return plotted.flatMap(quantity => this.#plots.get(quantity) ?? []);
  }
}
