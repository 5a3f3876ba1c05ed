import { emergencyReplies } from '../../machines/emergency.ts';
import { type Moment, offerOf } from '../../machines/moment.ts';
import { emergencies } from '../record/vocabulary/names.ts';
import type { EventBody } from './hearing.ts';

const ALWAYS: ReadonlySet<EventBody['type']> = new Set([
  'stop',
  'hold',
  'sayAgain',
  'status',
  'help',
  'timeLeft',
]);

/**
 * What something means that was said before this moment's question had been: stops, calls for help and plain wishes mean
 * the same whatever is asked; anything else would be the answer to a question that nobody has heard yet, and is none: null.
 */
export function meantUnasked(body: EventBody, moment: Moment): EventBody | null {
  if (ALWAYS.has(body.type)) return body;
  if (body.type !== 'reply') return null;
  if (offerOf(moment).anybodys?.some(id => id === body.id)) return body;
  const cause = emergencies.find(emergency => emergencyReplies[emergency] === body.id);
  return cause === undefined ? null : { type: 'stop', cause };
}
