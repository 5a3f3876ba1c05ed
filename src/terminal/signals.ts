const SIGNALS = ['SIGTERM', 'SIGINT', 'SIGHUP'] as const;

type EndSignal = (typeof SIGNALS)[number];

/**
 * npm hands on what the terminal has sent to everybody already: where its shell is replaced by the program, as bash
 * does it, one Ctrl-C comes twice, at once. Nobody presses twice as fast.
 */
const SAME_PRESS_MS = 150;

/**
 * Acts on the signals that ask a program to end, in place of ending. The same signal again at once is the same
 * wish.
 *
 * @returns what takes this away again
 */
export function onEndSignals(act: (signal: EndSignal) => void): () => void {
  const takenMs = new Map<EndSignal, number>();
  const signalled = (signal: NodeJS.Signals) => {
    const known = SIGNALS.find(each => each === signal);
    if (!known) return;
    const nowMs = performance.now();
    const beforeMs = takenMs.get(known);
    if (beforeMs !== undefined && nowMs - beforeMs < SAME_PRESS_MS) return;
    takenMs.set(known, nowMs);
    act(known);
  };
  for (const signal of SIGNALS) process.on(signal, signalled);
  return () => {
    for (const signal of SIGNALS) process.off(signal, signalled);
  };
}
