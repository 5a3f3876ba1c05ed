import type { Random } from '../../src/rehearsal/random.ts';

type Path = readonly (string | number)[];

/** Every place inside a value that may be broken by itself: figures, words, lists and parts. */
function placesIn(value: unknown, path: Path = []): Path[] {
  if (typeof value !== 'object' || value === null) return [path];
  const inner = Object.entries(value).flatMap(([key, at]) =>
    placesIn(at, [...path, Array.isArray(value) ? Number(key) : key]),
  );
  return path.length === 0 ? inner : [path, ...inner];
}

/** Nothing of a profile is any of these. */
const nonsense: readonly unknown[] = ['', -99_999, 1e9, { what: 1 }, [[]], '\u0000 x'.repeat(120)];

export interface Broken {
  readonly text: string;
  /** The field that is wrong, as a sentence has to name it. */
  readonly field: string;
}

const pathText = (path: Path) =>
  path.reduce<string>(
    (text, part) => (typeof part === 'number' ? `${text}[${part}]` : text === '' ? part : `${text}.${part}`),
    '',
  );

/** A profile with one thing broken: a value that cannot be, or a name that nobody knows. */
export function broken(profile: unknown, random: Random): Broken {
  const data: unknown = structuredClone(profile);
  // What says only where its schema lies may be any text.
  const places = placesIn(data).filter(([first]) => first !== '$schema');
  const pick = <T>(items: readonly T[]): T | undefined => items[Math.floor(random.next() * items.length)];
  const path = pick(places) ?? [];
  const inner = path.slice(0, -1).reduce<unknown>((at, part) => Reflect.get(Object(at), part), data);
  const last = path.at(-1) ?? '';
  const where = pathText(path);
  if (random.next() < 0.2 && typeof last === 'string') {
    Reflect.set(Object(inner), `${last}X`, Reflect.get(Object(inner), last));
    // An unknown key is named with the part that it stands in; of the origins it is itself the field.
    return { text: JSON.stringify(data), field: `${last}X` };
  }
  Reflect.set(Object(inner), last, pick(nonsense));
  return { text: JSON.stringify(data), field: where };
}
