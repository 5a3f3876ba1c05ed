import type { BusQuantity } from '../../../machines/limits/agreement.ts';
import { quantities } from '../../engineering/quantities/table.ts';
import type { VehicleLook } from './vehicle.ts';

/** A change that is worth a line of the record, in SI. */
const worthOf = (quantity: BusQuantity) => quantities[quantity].bus.worth;

const LEAST_MS = 1000;
/** While the engine runs a steady value is on the record so often. */
const STEADY_MS = 60_000;

export interface BusFact {
  readonly quantity: BusQuantity;
  readonly si: number;
}

/** Chooses, of all that the bus says, what goes on the record: changes, and once a minute what stays. */
export function createThinning(watched: readonly BusQuantity[]) {
  const kept = new Map<BusQuantity, { readonly si: number; readonly atMs: number }>();

  function isDue(quantity: BusQuantity, si: number, nowMs: number, running: boolean): boolean {
    const before = kept.get(quantity);
    if (!before) return true;
    const sinceMs = nowMs - before.atMs;
    return (
      (sinceMs >= LEAST_MS && Math.abs(si - before.si) >= worthOf(quantity)) ||
      (running && sinceMs >= STEADY_MS)
    );
  }

  return {
    due(nowMs: number, running: boolean, look: VehicleLook): BusFact[] {
      const facts = watched.flatMap(quantity => {
        const si = look.value(quantity);
        return si !== null && isDue(quantity, si, nowMs, running) ? [{ quantity, si }] : [];
      });
      for (const { quantity, si } of facts) kept.set(quantity, { si, atMs: nowMs });
      return facts;
    },
  };
}
