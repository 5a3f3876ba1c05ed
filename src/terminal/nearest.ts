/** How many letters have to be put in, taken out or changed to come from one word to the other (Levenshtein). */
function distance(from: string, to: string): number {
  let row = Array.from({ length: to.length + 1 }, (_, i) => i);
  for (const [i, letter] of [...from].entries()) {
    const next = [i + 1];
    for (const [j, other] of [...to].entries())
      next.push(
        Math.min((row[j] ?? 0) + (letter === other ? 0 : 1), (row[j + 1] ?? 0) + 1, (next[j] ?? 0) + 1),
      );
    row = next;
  }
  return row.at(-1) ?? 0;
}

/** The name that was probably meant: the one nearest to what was typed, by a third of its letters at most; else null. */
export function nearest(typed: string, names: readonly string[]): string | null {
  const [best] = names
    .map(name => ({ name, off: distance(typed.toLowerCase(), name) }))
    .filter(({ name, off }) => off <= name.length / 3)
    .sort((one, other) => one.off - other.off);
  return best?.name ?? null;
}
