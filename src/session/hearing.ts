import { isEmergency } from '../../machines/emergency.ts';
import type { SessionEvent } from '../../machines/events.ts';
import { isKnownEmergencyAt, type Moment, offerOf } from '../../machines/moment.ts';
import type { Person, Via } from '../../machines/vocabulary.ts';
import type { Language } from '../../prompts/types.ts';
import type { Heard } from '../voice/ports.ts';
import { isControl, isReplyId, secondOnly, slotValueToSi } from './grammar.ts';
import type { UnitSystem } from './units.ts';

type Without<Event> = Event extends unknown ? Omit<Event, 'atMs' | 'by' | 'via'> : never;

/** An event before it is stamped with its moment, its person and its way. */
export type EventBody = Without<SessionEvent>;

/** How certain the ear was goes with what it heard: what is read back may hang on it. */
const certaintyOf = ({ confidence }: { readonly confidence: number }, via: Via) =>
  via === 'voice' ? { certainty: Math.min(1, Math.max(0, confidence)) } : {};

/** Whom a stop is put down to at a device that both use: while a stop word is tried out, whoever was asked to. */
export const callerAtShared = (moment: Moment): Person => {
  const { awaits, by } = offerOf(moment);
  return awaits === 'drill' ? by : 'technician';
};

/** Free text is a reason here. */
export const takesReason = (moment: Moment) => offerOf(moment).freeText === true;

/**
 * What a thing heard means for the session now, and whom it is put down to.
 * @param speaker who it was, where the ear knows; else it is put down to the person who was asked
 */
export function meaningOf(
  heard: Heard,
  moment: Moment,
  via: Via,
  { language, units }: { readonly language: Language; readonly units: UnitSystem },
  speaker?: Person,
): { readonly body: EventBody | null; readonly by: Person } {
  const offer = offerOf(moment);
  const quantity = offer.quantity ?? offer.corrects;
  const by: Person = speaker ?? (via === 'voice' && secondOnly(moment) ? 'second' : offer.by);
  switch (heard.kind) {
    case 'stop': {
      const cause = heard.calls;
      if (!isEmergency(cause)) return { body: { type: 'stop' }, by };
      // Help has been called for it.
      const body = isKnownEmergencyAt(moment, cause) ? null : ({ type: 'stop', cause } as const);
      return { body, by };
    }
    case 'number':
      return quantity === heard.id
        ? {
            body: {
              type: 'value',
              quantity,
              si: slotValueToSi(quantity, heard.value, units),
              ...certaintyOf(heard, via),
            },
            by,
          }
        : { body: { type: 'unclear' }, by };
    case 'reply':
      if (isControl(language, heard.id)) return { body: { type: heard.id }, by };
      if (isReplyId(language, heard.id))
        return { body: { type: 'reply', id: heard.id, ...certaintyOf(heard, via) }, by };
      return { body: { type: 'unclear' }, by };
    case 'unclear': {
      // Its range, or to come nearer, is told; nothing was misunderstood.
      if (heard.reason === 'outOfRange' || heard.reason === 'farAway') return { body: null, by };
      if (via === 'keys' && takesReason(moment) && heard.text.trim() !== '')
        return { body: { type: 'reason', text: heard.text.trim() }, by };
      const awaited = offer.replies.length > 0 || offer.quantity !== undefined;
      return { body: awaited ? { type: 'unclear' } : null, by };
    }
  }
}
