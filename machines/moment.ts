import type { SnapshotFrom } from 'xstate';
import type { FirstStart } from './first-start.ts';
import type { Offer } from './toolkit.ts';

export type Moment = SnapshotFrom<FirstStart>;

const nothing: Offer = { replies: [], by: 'technician' };

/** What may be said now, besides the words that are always understood. */
export const offerOf = (moment: Moment): Offer =>
  Object.values(moment.getMeta()).find(offer => offer !== undefined) ?? nothing;

/** The state's name from phase to innermost state, e.g. `fill.coolantFilled.asking`, `stopped.askingCause`. */
export function stateName(moment: Moment): string {
  const parts: string[] = [];
  let value: unknown = moment.value;
  while (typeof value === 'object' && value !== null) {
    const [key] = Object.keys(value);
    if (key === undefined) break;
    if (key !== 'procedure') parts.push(key);
    value = Reflect.get(value, key);
  }
  if (typeof value === 'string') parts.push(value);
  return parts.join('.');
}

export const isOver = (moment: Moment) => moment.status === 'done';
