import { isKnownEmergencyAt, type Moment, offerOf } from '../../../machines/moment.ts';
import { KEY_TURNED_MS } from '../../../machines/progress.ts';
import type { Emergency } from '../../../machines/vocabulary.ts';
import type { NotCarriedOut } from '../../record/vocabulary/index.ts';
import type { Pairing } from '../pairing/pairings.ts';
import type { Deed, StopAnswer } from '../protocol/index.ts';
import { mayCallForHelp } from './commands/authority.ts';
import { speaksFor } from './commands/deeds.ts';
import type { DoneCommands } from './commands/done-commands.ts';
import type { Crew } from './crew.ts';
import type { CurrentRun } from './current-run.ts';
import { StopBook } from './stop-book.ts';

/** By what way a stop came, and what it calls for help for. */
export type HowStopped = Pick<Extract<Deed, { do: 'stop' }>, 'via' | 'cause'>;

/** What a device that stops is told, and whether it had stopped before; no answer to a stop that was none. */
export interface StopDone {
  readonly stop?: StopAnswer;
  readonly again: boolean;
}

/** What a stop acts on. */
interface StopScene {
  readonly current: CurrentRun;
  readonly crew: Crew;
  readonly done: DoneCommands;
  /** A session is being begun. */
  readonly isBeginning: () => boolean;
  /** Tells all faces at once. */
  readonly showNow: () => void;
}

/** Stops the session of a bay, in any state and for whoever asks: nothing is waited for. */
export class Stopping {
  readonly #scene: StopScene;
  readonly #book = new StopBook();
  /** Stops that came while a session was being begun. */
  #toCome: { readonly by: Pairing; readonly id: string; readonly how: HowStopped }[] = [];

  constructor(scene: StopScene) {
    this.#scene = scene;
  }

  /** To be told of every change of the session. */
  look(moment: Moment): void {
    this.#book.look(moment.matches('stopped'));
  }

  /**
   * It is stopped, and all faces are told, when this returns; the record follows. A stop while a session is being begun
   * counts as soon as there is one. What calls for help is called out in a session that is stopped already, too.
   */
  stop(by: Pairing, id: string, how: HowStopped = {}): StopDone {
    const { current, crew, done, isBeginning, showNow } = this.#scene;
    const { via = 'touch' } = how;
    const cause = mayCallForHelp(by.role) ? how.cause : undefined;
    const run = current.goingOn;
    if (!run)
      return isBeginning() ? this.#keep(by, id, { how, cause }) : { stop: 'nothingRuns', again: false };
    if (via === 'voice' && cause !== undefined && run.session.saysItself(cause)) {
      // The microphone heard the tool say that very word.
      this.notCarriedOut(by, id, how, 'toolSpoke');
      return { again: false };
    }
    const { moment } = run.session;
    const nowMs = run.clock.nowMs();
    if (!mayCallForHelp(by.role)) this.notCarriedOut(by, id, how, 'notAtEngine');
    const isSame =
      moment.matches('stopped') &&
      (done.find(by.device, id) !== undefined ||
        (!isNews(moment, cause) && !this.#book.take(by.device, nowMs, insistsAfterMs(moment))));
    if (isSame) return { stop: 'stopped', again: true };
    current.record(by, id, { do: 'stop' });
    const who = speaksFor(by, { run, crew });
    run.session.receive({ type: 'stop', device: by.device, ...(cause && { cause }) }, who, via);
    this.#book.take(by.device, nowMs);
    done.add(by.device, id, Promise.resolve());
    showNow();
    return { stop: 'stopped', again: false };
  }

  /**
   * A call for help that nothing follows from stands on the record all the same, once for each stop.
   * @param by the deed that it came by
   */
  notCarriedOut(
    { device, name, role }: Pairing,
    id: string,
    { cause }: HowStopped,
    why: NotCarriedOut,
    by: 'stop' | 'say' = 'stop',
  ): void {
    const { goingOn } = this.#scene.current;
    if (!goingOn || cause === undefined || !this.#book.take(`${device} ${cause} ${why}`)) return;
    goingOn.session.keep('notCarriedOut', { id, device, name, role, do: by, cause, why });
  }

  #keep(
    by: Pairing,
    id: string,
    { how, cause }: { readonly how: HowStopped; readonly cause: Emergency | undefined },
  ): StopDone {
    // Not by the book: it counts the stops of a session, and there is none. By that it is told again, not whether it is kept.
    const again = this.#toCome.some(
      each => each.by.device === by.device && (cause === undefined || each.how.cause === cause),
    );
    // One of each device and cause: a flood of them is no more than that.
    if (!this.#toCome.some(each => each.by.device === by.device && each.how.cause === how.cause))
      this.#toCome.push({ by, id, how });
    return { stop: 'stopped', again };
  }

  /** The session that was being begun is there: what came meanwhile stops it. */
  takeToCome(): void {
    this.#book.look(false);
    for (const { by, id, how } of this.#toCome)
      try {
        this.stop(by, id, how);
      } catch {
        // Its session has stopped itself and says why; the others are carried out all the same.
      }
  }

  /** What came meanwhile was carried out, or no session came of it, and there is nothing to stop. */
  forgetToCome(): void {
    this.#toCome = [];
  }
}

/**
 * How long after its stop a device calls for it once more, ms: whoever presses again by then, before all is off, says that it
 * goes on.
 */
const insistsAfterMs = (moment: Moment): number =>
  offerOf(moment).anybodys?.includes('stillRunning') === true ? KEY_TURNED_MS : Number.POSITIVE_INFINITY;

/** Whether a stop tells a session that is stopped already something new. */
function isNews(moment: Moment, cause: Emergency | undefined): boolean {
  // The second person may try their word out at the device at which the technician just did.
  if (offerOf(moment).awaits === 'drill') return true;
  return cause !== undefined && !isKnownEmergencyAt(moment, cause);
}
