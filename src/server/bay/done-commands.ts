import type { Entry } from '../../record/index.ts';
import { understand } from '../../record/vocabulary/index.ts';

/** Far more than a device could have under way. */
const REMEMBERED = 5000;

/** The commands that were done, so that none is done twice; each with the promise that it is on the record. */
export class DoneCommands {
  readonly #done = new Map<string, Promise<void>>();

  /** From the record of a session that is gone on with: what was recorded is not done again. */
  restore(entries: readonly Entry[]): void {
    for (const { kind, data } of entries) {
      const told = kind === 'command' ? understand(kind, data) : undefined;
      if (told?.kind === 'command') this.add(told.data.device, told.data.id, Promise.resolve());
    }
  }

  /** Undefined when it was not done; else a promise that settles when it is on the record. */
  find(device: string, id: string): Promise<void> | undefined {
    return this.#done.get(`${device} ${id}`);
  }

  add(device: string, id: string, recorded: Promise<void>): void {
    this.#done.set(`${device} ${id}`, recorded);
    const [oldest] = this.#done.keys();
    if (this.#done.size > REMEMBERED && oldest !== undefined) this.#done.delete(oldest);
  }

  /** It came to nothing: sent again, it may be done after all. */
  drop(device: string, id: string): void {
    this.#done.delete(`${device} ${id}`);
  }
}
