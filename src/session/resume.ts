import { initialTransition, transition } from 'xstate';
import { z } from 'zod';
import type { SessionEvent } from '../../machines/events.ts';
import { buildFirstStart } from '../../machines/first-start.ts';
import { isOver, type Moment } from '../../machines/moment.ts';
import { type Cause, type Quantity, quantityUnits } from '../../machines/vocabulary.ts';
import { english } from '../../prompts/en/index.ts';
import type { ReplyId } from '../../prompts/types.ts';
import type { Entry } from '../record/index.ts';
import { readHeader, type SessionHeader } from './header.ts';

/** A record that cannot be gone on with: one sentence, why and what to do. */
export class ResumeError extends Error {
  override readonly name = 'ResumeError';
}

const stamp = {
  atMs: z.number().nonnegative(),
  by: z.enum(['technician', 'second', 'supervisor']),
  via: z.enum(['voice', 'keys', 'touch', 'bus', 'tool']),
};

const isKey =
  <Key extends string>(table: Readonly<Record<Key, unknown>>) =>
  (value: string): value is Key =>
    value in table;

const code = z.object({ spn: z.number(), fmi: z.number() });

/** What the vehicle bus showed beside an answer. */
const bus = z
  .object({
    si: z.number(),
    speedRpm: z.number(),
    lamps: z.record(z.string(), z.enum(['lit', 'dark'])),
    codes: z.array(code),
  })
  .partial()
  .optional();

export const eventSchema = z.discriminatedUnion('type', [
  z.object({ type: z.literal('stop'), cause: z.custom<Cause>(isCause).optional(), ...stamp }),
  z.object({
    type: z.enum([
      'hold',
      'continue',
      'sayAgain',
      'goBack',
      'skip',
      'status',
      'timeLeft',
      'help',
      'unclear',
      'clock',
    ]),
    ...stamp,
  }),
  z.object({
    type: z.literal('reply'),
    id: z.string().refine(isKey<ReplyId>(english.replies)),
    bus,
    ...stamp,
  }),
  z.object({
    type: z.literal('value'),
    quantity: z.string().refine(isKey<Quantity>(quantityUnits)),
    si: z.number(),
    bus,
    ...stamp,
  }),
  z.object({ type: z.literal('codes'), codes: z.array(code), ...stamp }),
  z.object({ type: z.literal('reason'), text: z.string(), ...stamp }),
]);

function isCause(value: unknown): boolean {
  return typeof value === 'string' && value in english.causes;
}

export interface Restored {
  readonly header: SessionHeader;
  readonly moment: Moment;
  /** Session time of the last entry: the resumed clock goes on from here. */
  readonly lastMs: number;
}

/**
 * Rebuilds the moment at which a session broke off, by replaying its recorded events.
 * @throws ResumeError when the record is of another kind, or its session is already over
 */
export function restore(entries: readonly Entry[], source: string): Restored {
  const header = entries[0] ? readHeader(entries[0].data) : null;
  if (!header)
    throw new ResumeError(
      `${source} does not begin like a start-up session of this version; begin a new one.`,
    );
  const machine = buildFirstStart(header.profile);
  let [moment] = initialTransition(machine, { profile: header.profile, job: header.job });
  for (const entry of entries) {
    if (entry.kind !== 'event') continue;
    const event = eventSchema.safeParse(entry.data);
    if (!event.success)
      throw new ResumeError(
        `${source}, entry ${entry.seq}: not an event of this version (${event.error.issues[0]?.message}); begin a new session.`,
      );
    [moment] = transition(machine, moment, event.data as SessionEvent);
  }
  if (isOver(moment)) throw new ResumeError(`${source} is closed: its session was ended. Begin a new one.`);
  return { header, moment, lastMs: entries.at(-1)?.monoMs ?? 0 };
}
