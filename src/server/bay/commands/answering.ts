import type { Session } from '../../../session/session.ts';
import type { Heard, NumberSlot } from '../../../voice/ports.ts';
import { createTypedRecognizer } from '../../../voice/recognizers/typed.ts';
import type { Deed } from '../../protocol/index.ts';
import { Refused } from '../../refused.ts';

type Said = Extract<Deed, { do: 'say' }>;
type HeardDeed = Extract<Deed, { do: 'heard' }>;

/** Floating point leaves this much of a step between a value and the step it stands on. */
const STEP_SLACK = 1e-6;

/** What a typed line, or a choice that was touched, means to the session now; null when it is empty. */
export function heardInLine(session: Session, { text }: Said): Heard | null {
  let heard: Heard | null = null;
  const typed = createTypedRecognizer();
  typed.listen(session.grammar('keys'));
  typed.onHeard(one => {
    heard = one;
  });
  typed.type(text);
  return heard;
}

const couldBeSaid = ({ min, max, step }: NumberSlot, value: number): boolean => {
  const steps = value / step;
  return (
    value >= min &&
    value <= max &&
    Math.abs(steps - Math.round(steps)) <= STEP_SLACK * Math.max(1, Math.abs(steps))
  );
};

/**
 * What a device says that it heard, held against what may be said now: nothing counts that the session did
 * not offer, whatever the device believes.
 * @throws Refused when it could not have been heard by the grammar of this moment
 */
export function checkedHearing(session: Session, { heard }: HeardDeed): Heard {
  const grammar = session.grammar('voice');
  const known =
    heard.kind === 'reply'
      ? grammar.replies.some(({ id }) => id === heard.id)
      : heard.kind !== 'number' ||
        (grammar.number?.id === heard.id && couldBeSaid(grammar.number, heard.value));
  if (known) return heard;
  throw new Refused('notNow', `"${heard.text}" is no answer to what is asked now.`);
}

/** The second person's clear, where it is asked for. */
export function clearHeard(session: Session): Heard {
  const id = 'clearToCrank';
  const offered = session.grammar('keys').replies.find(reply => reply.id === id);
  if (!offered) throw new Refused('notNow', 'A clear is not asked for now.');
  return { kind: 'reply', id, text: offered.wordings[0] ?? id, confidence: 1 };
}
