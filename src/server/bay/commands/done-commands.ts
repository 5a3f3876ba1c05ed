import type { Entry } from '../../../record/index.ts';
import { understand } from '../../../record/vocabulary/index.ts';

/** Far more than a device could have under way; of each for itself, so that none makes those of another forgotten. */
const REMEMBERED_OF_ONE = 1000;

/** The commands that were done, so that none is done twice; each with the promise that it is on the record. */
export class DoneCommands {
  readonly #done = new Map<string, Map<string, Promise<void>>>();

  /** From the record of a session that is gone on with: what was recorded is not done again. */
  restore(entries: readonly Entry[]): void {
    for (const { kind, data } of entries) {
      const told = kind === 'command' ? understand(kind, data) : undefined;
      if (told?.kind === 'command') this.add(told.data.device, told.data.id, Promise.resolve());
    }
  }

  /**
   * Does a command, or waits for the same one that was done before or is being done.
   * @param begin does all that must not wait before it returns; its promise settles when the rest is on the record
   * @returns true when it had been done before
   * @throws whatever keeps it from being done, to all who asked for it: sent again, it may be done after all
   */
  async once(device: string, id: string, begin: () => Promise<void>): Promise<boolean> {
    const before = this.find(device, id);
    if (before) {
      await before;
      return true;
    }
    const doing = begin();
    this.add(device, id, doing);
    try {
      await doing;
    } catch (error) {
      this.drop(device, id);
      throw error;
    }
    return false;
  }

  /** Undefined when it was not done; else a promise that settles when it is on the record. */
  find(device: string, id: string): Promise<void> | undefined {
    return this.#done.get(device)?.get(id);
  }

  add(device: string, id: string, recorded: Promise<void>): void {
    const own = this.#done.get(device) ?? new Map<string, Promise<void>>();
    this.#done.set(device, own);
    own.set(id, recorded);
    const [oldest] = own.keys();
    if (own.size > REMEMBERED_OF_ONE && oldest !== undefined) own.delete(oldest);
  }

  /** It came to nothing: sent again, it may be done after all. */
  drop(device: string, id: string): void {
    this.#done.get(device)?.delete(id);
  }

  /** A device that never comes back, as one that was let go of, sends nothing again. */
  keepOnly(comesBack: (device: string) => boolean): void {
    for (const device of this.#done.keys()) if (!comesBack(device)) this.#done.delete(device);
  }
}
