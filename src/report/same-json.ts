/** Results of floating-point functions may differ in their last digits from one machine to another. */
const RELATIVE_TOLERANCE = 1e-9;

const isObject = (value: unknown): value is Readonly<Record<string, unknown>> =>
  typeof value === 'object' && value !== null && !Array.isArray(value);

const sameNumber = (a: number, b: number) =>
  Math.abs(a - b) <= RELATIVE_TOLERANCE * Math.max(1, Math.abs(a), Math.abs(b));

/**
 * Where two values differ once they are JSON: the name of the member, or undefined when they do not.
 * A member that is undefined counts as absent.
 * @param ignored names of members that are not compared, at any depth
 */
export function firstDifference(
  a: unknown,
  b: unknown,
  ignored: ReadonlySet<string>,
  where = 'data',
): string | undefined {
  if (typeof a === 'number' && typeof b === 'number') return sameNumber(a, b) ? undefined : where;
  if (Array.isArray(a) && Array.isArray(b)) {
    if (a.length !== b.length) return where;
    for (const [index, item] of a.entries()) {
      const found = firstDifference(item, b[index], ignored, where);
      if (found !== undefined) return found;
    }
    return undefined;
  }
  if (isObject(a) && isObject(b)) {
    for (const name of new Set([...Object.keys(a), ...Object.keys(b)])) {
      if (ignored.has(name)) continue;
      const [own, other] = [a, b].map(object => (Object.hasOwn(object, name) ? object[name] : undefined));
      const found = firstDifference(own, other, ignored, name);
      if (found !== undefined) return found;
    }
    return undefined;
  }
  return a === b ? undefined : where;
}
