/** A wish for rows: `part` wants `rows` in all, either wholly or as many of them as there are. */
export interface Wish<Part extends string> {
  readonly part: Part;
  readonly rows: number;
  readonly whole?: boolean;
}

/**
 * Deals out the rows of a screen: wishes are met in their order, as long as there are rows. A part may wish
 * several times, each time for more.
 *
 * @returns rows for each part that got any; together never more than `total`
 */
export function share<Part extends string>(
  total: number,
  wishes: readonly Wish<Part>[],
): ReadonlyMap<Part, number> {
  const given = new Map<Part, number>();
  let free = Math.max(0, total);
  for (const { part, rows, whole } of wishes) {
    const has = given.get(part) ?? 0;
    const missing = rows - has;
    if (missing <= 0 || free === 0 || (whole && missing > free)) continue;
    const more = Math.min(missing, free);
    given.set(part, has + more);
    free -= more;
  }
  return given;
}
