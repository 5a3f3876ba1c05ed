import { controlsOf, type Moment } from '../../../machines/moment.ts';
import type { Pairing } from '../pairing/pairings.ts';
import type { Crew } from './crew.ts';
import { type CurrentRun, standsStill } from './current-run.ts';
import type { Run } from './run.ts';

/** As long as a page takes to be loaded anew. */
const GRACE_MS = 4_000;

/**
 * What is said where the second person's device has gone; null where seconds count, and in a stop: the tool's own voice would
 * be in the way.
 */
export function saidOfSecondGone(moment: Moment): 'secondGone' | 'secondGoneRunning' | null {
  if (!controlsOf(moment).includes('hold')) return null;
  return moment.hasTag('running') ? 'secondGoneRunning' : 'secondGone';
}

/** Whether what nobody leads any more would go on unheard beside an engine that turns. */
export const goesOnUnheard = ({ session, viewer }: Run): boolean =>
  !standsStill(session.moment) && viewer.view().engine !== 'off';

/** Watches over who has left a bay: those who rely on them are told, and what nobody leads is stopped. */
export class AwayWatch {
  readonly #crew: Crew;
  readonly #current: CurrentRun;
  readonly #showNow: () => void;
  readonly #awayMs: number;
  #leaderAway: NodeJS.Timeout | undefined;
  #isClosed = false;

  /**
   * @param showNow tells all faces at once
   * @param awayMs after which a device that leads and has left is not waited for beside an engine that turns
   */
  constructor(crew: Crew, current: CurrentRun, showNow: () => void, awayMs: number) {
    this.#crew = crew;
    this.#current = current;
    this.#showNow = showNow;
    this.#awayMs = awayMs;
  }

  /** A device has left. */
  left(pairing: Pairing): void {
    // The server ends: that is what they left for.
    if (this.#isClosed) return;
    this.#lookAtLeader(pairing);
    // A page that is loaded anew is back sooner.
    setTimeout(() => this.tellIfAway(pairing), GRACE_MS).unref();
  }

  /** A device gives no sign of life over a line that is open: nobody knows whether its page hears, says or shows anything. */
  quiet(pairing: Pairing): void {
    this.#lookAtLeader(pairing);
    this.tellIfAway(pairing);
  }

  /** Whoever lost the second person's device has to know at once: their stop reaches nobody. */
  tellIfAway({ role }: Pairing): void {
    const run = this.#current.goingOn;
    if (role !== 'second' || !run || !this.#crew.isAway(role)) return;
    const line = saidOfSecondGone(run.session.moment);
    if (line === 'secondGoneRunning') run.session.callOut(line);
    else if (line) run.session.mention(line);
  }

  /** Nobody is waited for any more. */
  close(): void {
    this.#isClosed = true;
    clearTimeout(this.#leaderAway);
  }

  #lookAtLeader(pairing: Pairing): void {
    if (!this.#crew.isOwner(pairing) || this.#crew.attended()) return;
    clearTimeout(this.#leaderAway);
    this.#leaderAway = setTimeout(() => this.#stopUnlessLed(), this.#awayMs);
  }

  /** Nobody leads: what would go on unheard beside an engine that turns is stopped. */
  #stopUnlessLed(): void {
    const run = this.#current.goingOn;
    if (this.#crew.attended() || !run || !goesOnUnheard(run)) return;
    run.session.report('The device that leads is away: the session was stopped. Key off.');
    run.session.receive({ type: 'stop' }, 'technician', 'tool');
    this.#showNow();
  }
}
