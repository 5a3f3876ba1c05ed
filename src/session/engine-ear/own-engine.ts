import { CHANGES_AT_ONCE, CHANGES_PER_S } from '../../engineering/engine-sound/claims.ts';

/** So long a speed may be missing. */
const MISSING_MS = 3000;

/**
 * Knows this engine from another one in the bay: it is the one that was heard while this one was known to turn, and
 * without a break since.
 */
export function createOwnEngine() {
  let last: { readonly rpm: number; readonly atMs: number; readonly own: boolean } | null = null;
  return {
    /** @param turns by what people and bus say, this engine turns now */
    heard(rpm: number, nowMs: number, turns: boolean): void {
      const unbroken =
        last !== null &&
        nowMs - last.atMs <= MISSING_MS &&
        Math.abs(Math.log(rpm / last.rpm)) <= CHANGES_AT_ONCE + (CHANGES_PER_S * (nowMs - last.atMs)) / 1000;
      last = { rpm, atMs: nowMs, own: turns || (unbroken && last?.own === true) };
    },
    isHeard(nowMs: number): boolean {
      return last?.own === true && nowMs - last.atMs <= MISSING_MS;
    },
  };
}
