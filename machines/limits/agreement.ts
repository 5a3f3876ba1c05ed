import { judgeAgreement } from '../../src/engineering/agreement.ts';
import type { Verdict } from '../../src/engineering/result.ts';
import type { busQuantities } from '../../src/profile/schema.ts';
import { type Quantity, quantityUnits } from '../vocabulary.ts';

export type BusQuantity = (typeof busQuantities)[number];

interface Tolerances {
  /** Of a value that is read off a gauge and spoken: half a division, parallax and rounding. */
  readonly spoken: number;
  /** Of the sensor behind the bus, with one step of the parameter in SAE J1939-71. */
  readonly bus: number;
}

/** In SI. Common practice, no published source; the step is that of the parameter's table in src/bus. */
const tolerances: Readonly<Record<BusQuantity, Tolerances>> = {
  // A pointer swings, and people round to fifty.
  engineSpeed: { spoken: 50, bus: 10 + 0.125 },
  oilPressure: { spoken: 35, bus: 20 + 4 },
  coolantTemperature: { spoken: 4, bus: 2 + 1 },
  batteryVoltage: { spoken: 0.2, bus: 0.2 + 0.05 },
  chargingVoltage: { spoken: 0.2, bus: 0.2 + 0.05 },
  ambientTemperature: { spoken: 3, bus: 4 + 0.03125 },
};

export const isBusQuantity = (quantity: Quantity): quantity is BusQuantity => quantity in tolerances;

/** A spoken value held against what the bus showed at that moment; null where that cannot be done. */
export function judgeSpoken(quantity: Quantity, spokenSi: number, busSi: number | undefined): Verdict | null {
  if (busSi === undefined || !isBusQuantity(quantity)) return null;
  const { spoken, bus } = tolerances[quantity];
  const verdict = judgeAgreement(
    { value: spokenSi, tolerance: spoken },
    { value: busSi, tolerance: bus },
    quantityUnits[quantity],
  );
  return verdict.ok ? verdict.value : null;
}
