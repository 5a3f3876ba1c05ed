/** The temperature at which manuals state the wait, where they say nothing else: common practice, no published source. */
export const STATED_AT_C = -20;

/** The longest wait that a profile may have. */
export const LONGEST_WAIT_S = 300;

/** The waits of a usual table by temperature, as shares of that at -20 °C: common practice, no published source. */
const SHARES = [
  [-45, 1.7],
  [-30, 1.3],
  [STATED_AT_C, 1],
  [-10, 0.7],
  [5, 0.3],
  [20, 0],
  [60, 0],
] as const;

/** The share of the wait at -20 °C that this temperature has, in a straight line between those of the table. */
function shareAt(atC: number): number {
  const next = SHARES.findIndex(([c]) => c >= atC);
  const [toC, to] = SHARES[Math.max(next, 0)] ?? SHARES[0];
  const [fromC, from] = SHARES[Math.max(next - 1, 0)] ?? SHARES[0];
  return toC === fromC ? to : from + ((to - from) * (atC - fromC)) / (toC - fromC);
}

/**
 * The table of a heater that waits so long at one temperature, coldest first; seconds, whole.
 * @param atC from -45 to 0 degC
 */
export const waitsFor = (waitS: number, atC: number): { readonly atC: number; readonly waitS: number }[] => {
  // What the manual says stands there as it says it; whole seconds beside it are no longer in more warmth.
  const beside = (c: number, seconds: number) =>
    c < atC ? Math.max(seconds, waitS) : Math.min(seconds, waitS);
  const rows = SHARES.map(([c, share]) => ({
    atC: c,
    waitS: beside(c, Math.round((waitS * share) / shareAt(atC))),
  }));
  return [...rows.filter(row => row.atC !== atC), { atC, waitS }].toSorted((a, b) => a.atC - b.atC);
};

/** The wait of the deepest cold of that table, s. */
export const longestWait = (waitS: number, atC: number): number => waitsFor(waitS, atC)[0]?.waitS ?? waitS;
