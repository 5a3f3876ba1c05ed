import type { Moment } from '../../../machines/moment.ts';
import type { Pairing } from '../pairing/pairings.ts';
import type { BayState, Deed } from '../protocol/index.ts';
import { Turns } from './commands/question.ts';
import type { Run } from './run.ts';

/** The session stands still already: nothing goes on that could be held or stopped. */
export const standsStill = (moment: Moment): boolean => moment.matches('held') || moment.matches('stopped');

/** The session of a bay that goes on, or was the last one: which it is, what is asked in it, and whether a hold is asked for. */
export class CurrentRun {
  readonly #followed: (run: Run) => void;
  #run: Run | null = null;
  /** A session that ran here and cannot be gone on with, until somebody at its engine has said that it is safe. */
  lost: BayState['lost'] = null;
  #turns = new Turns('', () => 0);
  #holdAsked: BayState['holdAsked'] = null;

  /** @param followed called with each session that is put here */
  constructor(followed: (run: Run) => void) {
    this.#followed = followed;
  }

  /** Also when it is over: its last view stays until the next one begins. */
  get run(): Run | null {
    return this.#run;
  }

  get goingOn(): Run | null {
    return this.#run && !this.#run.isOver ? this.#run : null;
  }

  get sessionMs(): number | null {
    return this.#run?.clock.nowMs() ?? null;
  }

  /** Names the question that is asked at this moment, whether anybody has been told of it or not. */
  get turn(): string {
    if (this.#run) this.#turns.look(this.#run.session.moment);
    return this.#turns.name;
  }

  get holdAsked(): BayState['holdAsked'] {
    return this.#holdAsked;
  }

  /** The supervisor asks for a hold; it is asked for until it is declined, or nothing goes on any more. */
  askHold({ name }: Pairing): void {
    this.#holdAsked = { by: name, atSessionMs: this.sessionMs ?? 0 };
  }

  declineHold(): void {
    this.#holdAsked = null;
  }

  /** From now on it is this one. */
  follow(run: Run): void {
    this.#run = run;
    this.#holdAsked = null;
    const turns = new Turns(run.id, () => run.record.entries);
    this.#turns = turns;
    run.session.watch(() => {
      turns.look(run.session.moment);
      if (standsStill(run.session.moment)) this.#holdAsked = null;
    });
    this.#followed(run);
  }

  /** It is left for another day. */
  leave(): void {
    this.#run = null;
    this.#holdAsked = null;
  }

  /** What listens to the people at the engine, as the faces name it. */
  listensWith(source: string): void {
    this.#run?.viewer.listensWith(source);
  }

  /** Puts on the record who asked for what. */
  record({ device, name, role }: Pairing, id: string, deed: Deed): void {
    this.goingOn?.session.keep('command', { id, device, name, role, do: deed.do });
  }
}
