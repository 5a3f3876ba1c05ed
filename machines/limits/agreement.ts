import { judgeAgreement } from '../../src/engineering/agreement.ts';
import { factsOf } from '../../src/engineering/quantities/table.ts';
import type { Verdict } from '../../src/engineering/result.ts';
import type { busQuantities } from '../../src/profile/schema.ts';
import { type Quantity, quantityUnits } from '../vocabulary.ts';

export type BusQuantity = (typeof busQuantities)[number];

export const isBusQuantity = (quantity: Quantity): quantity is BusQuantity =>
  factsOf(quantity).bus !== undefined;

/** A spoken value held against what the bus showed at that moment; null where that cannot be done. */
export function judgeSpoken(quantity: Quantity, spokenSi: number, busSi: number | undefined): Verdict | null {
  const { tolerance, bus } = factsOf(quantity);
  if (busSi === undefined || bus === undefined) return null;
  const { endsAt = Number.POSITIVE_INFINITY } = bus;
  const verdict = judgeAgreement(
    // At the end of what the bus can show, whatever is above it agrees.
    { value: busSi >= endsAt ? Math.min(spokenSi, endsAt) : spokenSi, tolerance },
    { value: busSi, tolerance: bus.tolerance },
    quantityUnits[quantity],
  );
  return verdict.ok ? verdict.value : null;
}

/** How far a speed by ear may be off: 2 % as measured (docs/engine-sound.md), and what a needle swings meanwhile. */
const HEARD_SHARE = 0.02;
const HEARD_LEAST_RPM = 15;

/** A spoken speed held against what the microphone heard of the engine; null where there is nothing to hold. */
export function judgeHeard(
  quantity: Quantity,
  spokenSi: number,
  heardRpm: number | undefined,
): Verdict | null {
  if (quantity !== 'engineSpeed' || heardRpm === undefined) return null;
  const verdict = judgeAgreement(
    { value: spokenSi, tolerance: factsOf(quantity).tolerance },
    { value: heardRpm, tolerance: Math.max(HEARD_LEAST_RPM, HEARD_SHARE * heardRpm) },
    quantityUnits[quantity],
  );
  return verdict.ok ? verdict.value : null;
}
