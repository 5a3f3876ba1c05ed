export type Json = null | boolean | number | string | readonly Json[] | JsonObject;
export interface JsonObject {
  readonly [name: string]: Json;
}

/** Deeper data is refused: no event needs it, and it keeps hostile files from exhausting the stack. */
export const MAX_DEPTH = 64;

export function isJsonObject(value: unknown): value is JsonObject {
  return typeof value === 'object' && value !== null && !Array.isArray(value);
}

/** Half of a surrogate pair: RFC 8785 section 3.2.2.2 has such text refused. */
const loneSurrogate = /\p{Surrogate}/u;

/**
 * Says what in a value JSON cannot hold ("data.readings[2] is NaN"), or undefined when it holds all of it.
 * @param where name of the value itself, for the message
 */
export function findNonJson(value: unknown, where: string, depth = 0): string | undefined {
  switch (typeof value) {
    case 'boolean':
      return undefined;
    case 'string':
      return loneSurrogate.test(value) ? `${where} holds half a character` : undefined;
    case 'number':
      return Number.isFinite(value) ? undefined : `${where} is ${value}, not a finite number`;
    case 'object':
      return value === null ? undefined : findNonJsonInside(value, where, depth);
    default:
      return `${where} is of type ${typeof value}`;
  }
}

function findNonJsonInside(value: object, where: string, depth: number): string | undefined {
  if (depth >= MAX_DEPTH) return `${where} is nested deeper than ${MAX_DEPTH} levels`;
  if (Array.isArray(value)) {
    // A plain loop, because holes are skipped by the array's own methods.
    for (let i = 0; i < value.length; i++) {
      const found = findNonJson(value[i], `${where}[${i}]`, depth + 1);
      if (found !== undefined) return found;
    }
    return undefined;
  }
  const prototype: unknown = Object.getPrototypeOf(value);
  if (prototype !== Object.prototype && prototype !== null) return `${where} is not a plain object`;
  for (const [name, member] of Object.entries(value)) {
    if (loneSurrogate.test(name)) return `a name in ${where} holds half a character`;
    const found = findNonJson(member, `${where}.${name}`, depth + 1);
    if (found !== undefined) return found;
  }
  return undefined;
}
