import type { BusQuantity } from '../../../machines/limits/agreement.ts';
import type { VehicleLook } from './vehicle.ts';

/** A change that is worth a line of the record, in SI. */
const WORTH: Readonly<Record<BusQuantity, number>> = {
  engineSpeed: 50,
  oilPressure: 20,
  coolantTemperature: 2,
  batteryVoltage: 0.3,
  chargingVoltage: 0.3,
  ambientTemperature: 2,
};
const LEAST_MS = 1000;
/** While the engine runs a steady value is on the record so often. */
const STEADY_MS = 60_000;

export interface BusFact {
  readonly quantity: BusQuantity;
  readonly si: number;
}

/** Chooses, of all that the bus says, what goes on the record: changes, and once a minute what stays. */
export function createThinning(quantities: readonly BusQuantity[]) {
  const kept = new Map<BusQuantity, { readonly si: number; readonly atMs: number }>();

  function isDue(quantity: BusQuantity, si: number, nowMs: number, running: boolean): boolean {
    const before = kept.get(quantity);
    if (!before) return true;
    const sinceMs = nowMs - before.atMs;
    return (
      (sinceMs >= LEAST_MS && Math.abs(si - before.si) >= WORTH[quantity]) ||
      (running && sinceMs >= STEADY_MS)
    );
  }

  return {
    due(nowMs: number, running: boolean, look: VehicleLook): BusFact[] {
      const facts = quantities.flatMap(quantity => {
        const si = look.value(quantity);
        return si !== null && isDue(quantity, si, nowMs, running) ? [{ quantity, si }] : [];
      });
      for (const { quantity, si } of facts) kept.set(quantity, { si, atMs: nowMs });
      return facts;
    },
  };
}
