import { addressKey } from '../rate-limit.ts';

/** More than the devices of all bays of a shop have. */
const MOST_KNOWN = 1000;

/** The addresses from which paired devices have said hello: they find a place where strangers find none any more. */
export class KnownAddresses {
  readonly #keys = new Set<string>();

  note(address: string): void {
    const key = addressKey(address);
    // The one noted last is the last to be forgotten.
    this.#keys.delete(key);
    this.#keys.add(key);
    const [oldest] = this.#keys;
    if (this.#keys.size > MOST_KNOWN && oldest !== undefined) this.#keys.delete(oldest);
  }

  has(address: string): boolean {
    return this.#keys.has(addressKey(address));
  }
}
