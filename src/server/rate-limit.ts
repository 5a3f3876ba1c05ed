export interface Rate {
  /** So many at once. */
  readonly burst: number;
  /** So many in the long run. */
  readonly perSecond: number;
}

/** A rate that never lets more through within an hour, whenever it begins: half of them at once, the others spread over it. */
export const atMostInAnHour = (most: number): Rate => ({
  burst: Math.ceil(most / 2),
  perSecond: Math.floor(most / 2) / 3600,
});

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
    if (!this.hasOne()) return false;
    this.#left -= 1;
    return true;
  }

  /** True when one more could pass now. */
  hasOne(): boolean {
    const nowMs = this.#nowMs();
    const gained = (Math.max(0, nowMs - this.#atMs) / 1000) * this.#rate.perSecond;
    this.#left = Math.min(this.#rate.burst, this.#left + gained);
    this.#atMs = nowMs;
    return this.#left >= 1;
  }
}

/** What counts as one address: of IPv6 the network, for a single machine has all addresses of it. */
export function addressKey(address: string): string {
  const plain = address.replace(/^::ffff:/i, '');
  if (!plain.includes(':')) return plain;
  const [head = '', tail] = plain.split('::');
  const groups = head.split(':');
  const filled =
    tail === undefined ? groups : [...groups, ...Array.from({ length: 8 - groups.length }, () => '0')];
  return `${filled.slice(0, 4).join(':')}::/64`;
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
    return this.#bucketOf(key).take();
  }

  hasOne(key: string): boolean {
    return this.#bucketOf(key).hasOne();
  }

  #bucketOf(key: string): TokenBucket {
    const bucket = this.#buckets.get(key) ?? new TokenBucket(this.#rate, this.#nowMs);
    // The key used last is the last to be forgotten.
    this.#buckets.delete(key);
    this.#buckets.set(key, bucket);
    const [oldest] = this.#buckets.keys();
    if (this.#buckets.size > this.#most && oldest !== undefined) this.#buckets.delete(oldest);
    return bucket;
  }
}
