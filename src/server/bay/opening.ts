import type { Deed } from '../protocol/index.ts';
import { Refused } from '../refused.ts';
import { running } from './commands/deeds.ts';
import type { DoneCommands } from './commands/done-commands.ts';
import type { CurrentRun } from './current-run.ts';
import type { Mouths } from './remote-voice.ts';
import type { Resumed, Starter } from './starter.ts';
import type { Stopping } from './stopping.ts';

/** What sessions are opened with. */
interface Threshold {
  readonly bay: string;
  readonly starter: Pick<Starter, 'start' | 'goOn' | 'resume' | 'leave'>;
  readonly mouths: Mouths;
  readonly current: CurrentRun;
  readonly done: DoneCommands;
  readonly stopping: Stopping;
  /** Tells all faces at once. */
  readonly showNow: () => void;
}

/** Begins the sessions of a bay, goes on with them, and sets them aside: one goes on at a time. */
export class Opening {
  readonly #with: Threshold;
  #isUnderWay = false;

  constructor(threshold: Threshold) {
    this.#with = threshold;
  }

  /** A session is being begun. */
  get isUnderWay(): boolean {
    return this.#isUnderWay;
  }

  /** @throws Refused when another one goes on here, or it cannot be begun */
  begin(deed: Extract<Deed, { do: 'begin' }>): Promise<void> {
    const { bay, starter, mouths, current } = this.#with;
    return this.#open(async () => {
      const run = await starter.start(bay, deed, mouths);
      return () => current.follow(run);
    });
  }

  /** @throws Refused when another one goes on here, or this one cannot be gone on with */
  goOn(session: string): Promise<void> {
    const { bay, starter, mouths } = this.#with;
    return this.#open(async () => {
      const resumed = await starter.goOn(bay, session, mouths);
      return () => this.#take(resumed);
    });
  }

  /** Goes on with the session that broke off when the server ended, if there is one. */
  async resume(): Promise<void> {
    const { bay, starter, mouths } = this.#with;
    const resumed = await starter.resume(bay, mouths);
    if (!resumed) return;
    this.#take(resumed);
    await resumed.run.session.begin();
  }

  /**
   * Leaves the session for another day.
   * @param record puts on its record who asked for it, once it may be left
   * @throws Refused where the procedure would not let the session be ended either
   */
  async setAside(record: () => void): Promise<void> {
    const { bay, starter, current, showNow } = this.#with;
    const run = running(current.run);
    if (!run.mayBeLeft)
      throw new Refused(
        'notNow',
        'A session is set aside when it is stopped and everything is said to be off: stop it, then answer.',
      );
    record();
    current.leave();
    showNow();
    // At once: another session may be begun here while the record of this one is still being closed.
    await Promise.all([starter.leave(bay), run.close()]);
  }

  /**
   * Opens a session. Nobody sees it, stops it or answers in it before it is begun: what comes meanwhile waits in `stopping`.
   * @param make gives what leaves the session in `current`
   */
  async #open(make: () => Promise<() => void>): Promise<void> {
    const { current, stopping } = this.#with;
    if (this.#isUnderWay || current.goingOn)
      throw new Refused('notNow', 'A session goes on in this bay; stop and end it first.');
    this.#isUnderWay = true;
    const before = current.run;
    try {
      const follow = await make();
      await before?.close();
      follow();
      const begun = current.run?.session.begin();
      this.#isUnderWay = false;
      stopping.takeToCome();
      await begun;
    } finally {
      this.#isUnderWay = false;
      stopping.forgetToCome();
    }
  }

  /** A session that is gone on with: what was done in it is not done again. */
  #take({ run, entries }: Resumed): void {
    this.#with.done.restore(entries);
    this.#with.current.follow(run);
  }
}
