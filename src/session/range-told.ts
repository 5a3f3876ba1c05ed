import type { PromptValues } from '../../machines/vocabulary.ts';
import { isQuantity, quantityUnits } from '../engineering/quantities/table.ts';
import type { NumberSlot } from '../voice/ports.ts';
import { slotValueToSi } from './grammar.ts';
import type { UnitSystem } from './units.ts';

/** What is read and between which limits, SI, to tell of a number that no gauge here shows; null where none is asked for. */
export function rangeTold(number: NumberSlot | undefined, units: UnitSystem): PromptValues | null {
  if (!number || !isQuantity(number.id)) return null;
  const { id: quantity, min, max } = number;
  const si = (value: number) => slotValueToSi(quantity, value, units);
  return {
    name: { quantityName: quantity },
    limits: { limits: { unit: quantityUnits[quantity], of: quantity, min: si(min), max: si(max) } },
  };
}
