import { type CanId, destinationOf, pgnOf, priorityOf, sourceOf } from '../../src/bus/can-id.ts';

/** All fields of a 29-bit identifier at once. */
export const fieldsOf = (id: number): CanId => ({
  priority: priorityOf(id),
  pgn: pgnOf(id),
  source: sourceOf(id),
  destination: destinationOf(id),
});
