import { type Moment, offerOf, stateName } from '../../../../machines/moment.ts';
import { clearValidMs } from '../../../../machines/timing.ts';
import { secondOnly } from '../../../session/grammar.ts';
import type { BayState } from '../../protocol/index.ts';
import type { Question } from './authority.ts';

/** Who is asked now, and who may answer. */
export const questionOf = (
  moment: Moment,
  has: { readonly second: boolean; readonly supervisor: boolean },
): Question => ({
  addressed: offerOf(moment).by,
  ownDeviceOnly: has.second,
  supervisorsOwn: has.supervisor,
  secondOnly: secondOnly(moment),
});

/** How it stands with the second person's clear. */
export function clearOf(moment: Moment | null, ownDeviceOnly: boolean): BayState['clear'] {
  const none = { state: 'notAsked' as const, untilSessionMs: null, ownDeviceOnly };
  if (!moment) return none;
  const { context } = moment;
  if (context.clearAtMs !== null)
    return { state: 'given', untilSessionMs: context.clearAtMs + clearValidMs(context), ownDeviceOnly };
  return offerOf(moment).awaits === 'clear' ? { ...none, state: 'needed' } : none;
}

/** Counts the questions of one session: another number as soon as another thing is asked, or waits for its read-back. */
export class Turns {
  readonly #session: string;
  readonly #entries: () => number;
  #asked = '';
  #pending: unknown;
  #number = 0;

  /** @param entries length of the record: it only grows, after a restart too, so no number comes twice */
  constructor(session: string, entries: () => number) {
    this.#session = session;
    this.#entries = entries;
  }

  look(moment: Moment): void {
    const asked = stateName(moment);
    if (asked === this.#asked && moment.context.pending === this.#pending) return;
    this.#asked = asked;
    this.#pending = moment.context.pending;
    this.#number = this.#entries();
  }

  get name(): string {
    return `${this.#session}/${this.#number}`;
  }
}
