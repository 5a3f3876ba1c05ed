export interface Rate {
  /** So many at once. */
  readonly burst: number;
  /** So many in the long run. */
  readonly perSecond: number;
}

/** Lets through what stays within a rate. */
export class TokenBucket {
  readonly #rate: Rate;
  readonly #nowMs: () => number;
  #left: number;
  #atMs: number;

  constructor(rate: Rate, nowMs: () => number) {
    this.#rate = rate;
    this.#nowMs = nowMs;
    this.#left = rate.burst;
    this.#atMs = nowMs();
  }

  /** True when one more may pass; it is counted then. */
  take(): boolean {
    const nowMs = this.#nowMs();
    const gained = (Math.max(0, nowMs - this.#atMs) / 1000) * this.#rate.perSecond;
    this.#left = Math.min(this.#rate.burst, this.#left + gained);
    this.#atMs = nowMs;
    if (this.#left < 1) return false;
    this.#left -= 1;
    return true;
  }
}

/** A rate for each key (an address, a device), in memory that does not grow with the number of keys. */
export class RateByKey {
  readonly #rate: Rate;
  readonly #nowMs: () => number;
  readonly #most: number;
  readonly #buckets = new Map<string, TokenBucket>();

  constructor(rate: Rate, nowMs: () => number, most = 1000) {
    this.#rate = rate;
    this.#nowMs = nowMs;
    this.#most = most;
  }

  take(key: string): boolean {
    const bucket = this.#buckets.get(key) ?? new TokenBucket(this.#rate, this.#nowMs);
    // The key used last is the last to be forgotten.
    this.#buckets.delete(key);
    this.#buckets.set(key, bucket);
    const [oldest] = this.#buckets.keys();
    if (this.#buckets.size > this.#most && oldest !== undefined) this.#buckets.delete(oldest);
    return bucket.take();
  }
}
