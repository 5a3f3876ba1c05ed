/** A change that is worth a line of the record, rpm; and so often at the most, and at the least while it is heard. */
const WORTH_RPM = 30;
const LEAST_MS = 1000;
const STEADY_MS = 30_000;

/** Chooses, of all speeds that are heard, what goes on the record: changes, and twice a minute what stays. */
export function createKeeping() {
  let kept: { readonly rpm: number; readonly atMs: number } | null = null;
  return {
    isDue(rpm: number, nowMs: number): boolean {
      const sinceMs = kept ? nowMs - kept.atMs : Number.POSITIVE_INFINITY;
      const changed = kept === null || Math.abs(rpm - kept.rpm) >= WORTH_RPM;
      if (sinceMs < LEAST_MS || !(changed || sinceMs >= STEADY_MS)) return false;
      kept = { rpm, atMs: nowMs };
      return true;
    },
  };
}
