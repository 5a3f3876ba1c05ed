import type { PairingNews, Role } from '../protocol/index.ts';

const MINUTE_MS = 60_000;
/** So long before its end a device is warned. */
export const WARN_MS = 60 * MINUTE_MS;
/** With less than this left, a pairing is renewed where it may be. */
const RENEW_MS = 10 * MINUTE_MS;
export const RENEWED_FOR_MS = 30 * MINUTE_MS;

/** What of a connected device decides on what it still may do. */
export interface Attendance {
  readonly role: Role;
  /** It was let go of. */
  readonly letGo: boolean;
  /** How long its pairing is good for; 0: it has run out. */
  readonly leftMs: number;
  /** A session goes on in its bay. */
  readonly sessionOpen: boolean;
  /** It has been connected since its pairing was good. */
  readonly live: boolean;
}

/** `gone`: nothing at all any more. `renew`: as good, and to be made good for longer. */
export type Standing = PairingNews['state'] | 'renew' | 'gone';

/**
 * How it stands with a device. A session that goes on takes a stop from every device that was not let go of;
 * while it is connected it keeps its pairing too, but for the supervisor's.
 */
export function standingOf({ role, letGo, leftMs, sessionOpen, live }: Attendance): Standing {
  if (letGo) return 'gone';
  const kept = sessionOpen && live && role !== 'supervisor';
  if (kept && leftMs <= RENEW_MS) return 'renew';
  if (leftMs > WARN_MS) return 'good';
  if (leftMs > 0) return 'endsSoon';
  return sessionOpen ? 'stopOnly' : 'gone';
}

/** What a device is told of it, in one sentence; empty where there is nothing to say. */
export function standingSentence(state: PairingNews['state'], role: Role): string {
  switch (state) {
    case 'good':
      return '';
    case 'endsSoon':
      return role === 'supervisor'
        ? 'The pairing of this device ends within the hour; then it can only stop. Pair it again before.'
        : 'The pairing of this device ends within the hour, or with the session where that is later; pair it again then.';
    case 'stopOnly':
      return 'The pairing of this device has ended: it can stop the session and nothing else. Pair it again.';
  }
}
