/** One question for the time and its answer. */
export interface TimeExchange {
  /** The client's clock when it asked and when the answer came, in ms. */
  readonly sentMs: number;
  readonly receivedMs: number;
  /** The server's clock when it answered, in ms. */
  readonly serverMs: number;
}

export interface ClockOffset {
  /** How far the client's clock is ahead of the server's; wrong by half the round trip at the most. */
  readonly offsetMs: number;
  readonly roundTripMs: number;
}

/**
 * The offset between two clocks from exchanges over a network, by the one with the shortest round trip: the
 * answer is taken to have left the server half way (RFC 5905, section 8, with one server time stamp).
 * Null when there is no exchange that could have happened.
 */
export function clockOffset(exchanges: readonly TimeExchange[]): ClockOffset | null {
  const possible = exchanges.filter(
    ({ sentMs, receivedMs, serverMs }) =>
      Number.isFinite(sentMs) && Number.isFinite(serverMs) && receivedMs >= sentMs,
  );
  const [best] = possible.sort((a, b) => a.receivedMs - a.sentMs - (b.receivedMs - b.sentMs));
  if (!best) return null;
  const roundTripMs = best.receivedMs - best.sentMs;
  return { offsetMs: best.sentMs + roundTripMs / 2 - best.serverMs, roundTripMs };
}
