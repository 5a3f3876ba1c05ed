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
  readonly starter: Pick<Starter, 'start' | 'goOn' | 'resume' | 'leave' | 'brokeOff' | 'isLost' | 'madeSafe'>;
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
  /** What broke meanwhile that a session hangs on. */
  #failure: { readonly error: unknown } | null = null;

  constructor(threshold: Threshold) {
    this.#with = threshold;
  }

  /** A session is being begun. */
  get isUnderWay(): boolean {
    return this.#isUnderWay;
  }

  /** Something broke that a session hangs on, while it is being begun: none comes of it. */
  fails(error: unknown): void {
    // Forgotten where the next one begins.
    this.#failure = { error };
  }

  /** @throws Refused when another one goes on here, or it cannot be begun */
  begin(deed: Extract<Deed, { do: 'begin' }>): Promise<void> {
    const { bay, starter, mouths } = this.#with;
    return this.#open(async () => ({ run: await starter.start(bay, deed, mouths), entries: [] }));
  }

  /** @throws Refused when another one goes on here, or this one cannot be gone on with */
  goOn(session: string): Promise<void> {
    const { bay, starter, mouths } = this.#with;
    return this.#open(() => starter.goOn(bay, session, mouths));
  }

  /**
   * Goes on with the session that broke off when the server ended, if there is one.
   * @throws whatever keeps it from being gone on with; it is lost then
   */
  async resume(): Promise<void> {
    const { bay, starter, mouths, current, showNow } = this.#with;
    const session = starter.brokeOff(bay);
    try {
      await this.#open(() => starter.resume(bay, mouths));
    } catch (error) {
      if (session !== null) {
        current.lost = { session: session || null };
        showNow();
        await starter.isLost(bay, session);
      }
      throw error;
    }
  }

  /** Somebody at the engine of the session that is lost has said that it is off, and all is safe. */
  async madeSafe(by: string): Promise<void> {
    const { bay, starter, current, showNow } = this.#with;
    if (current.lost === null) return;
    await starter.madeSafe(bay, by);
    current.lost = null;
    showNow();
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
   * @param make gives it, or null where there is none
   */
  async #open(make: () => Promise<Resumed | null>): Promise<void> {
    const { current, stopping } = this.#with;
    if (this.#isUnderWay || current.goingOn)
      throw new Refused('notNow', 'A session goes on in this bay; stop and end it first.');
    if (current.lost)
      throw new Refused(
        'notNow',
        'A session that ran here was lost: say first that its engine is off and all is safe.',
      );
    this.#isUnderWay = true;
    this.#failure = null;
    const before = current.run;
    try {
      const made = await make();
      await before?.close();
      if (made) await this.#put(made);
    } finally {
      this.#isUnderWay = false;
      stopping.forgetToCome();
    }
  }

  /** What was done in a session that is gone on with is not done again. One that cannot be begun is not left half begun. */
  async #put({ run, entries }: Resumed): Promise<void> {
    const { bay, starter, current, done, stopping, showNow } = this.#with;
    try {
      if (this.#failure) throw this.#failure.error;
      done.restore(entries);
      current.follow(run);
      const begun = run.session.begin();
      stopping.takeToCome();
      await begun;
    } catch (error) {
      current.leave();
      // What else fails here hangs on what failed first, which is the one to be told.
      await Promise.allSettled([starter.leave(bay), run.close()]);
      showNow();
      throw error;
    }
  }
}
