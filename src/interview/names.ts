import { languages } from '../../prompts/index.ts';

/** What people call things, and the short names that the record has for them. */

/** Names that the bus and the rehearsal know by these short names. */
const KNOWN: Readonly<Record<string, string>> = {
  'red warning': 'redStop',
  'red stop': 'redStop',
};

/** What things are called in other languages, by those names in lower case: the record has one name for each. */
const englishNames = new Map(
  Object.values(languages).flatMap(({ bySentence }) =>
    Object.entries(bySentence).map(([english, own]) => [own.toLowerCase(), english] as const),
  ),
);

/** A short name in camelCase of what people call it: `coolant level` becomes `coolantLevel`. */
export function idOf(name: string): string {
  const english = englishNames.get(name.toLowerCase()) ?? name;
  const known = KNOWN[english.toLowerCase()];
  if (known !== undefined) return known;
  const words = english
    .normalize('NFD')
    .replace(/[^A-Za-z0-9 ]/g, ' ')
    .split(/\s+/)
    .filter(word => word !== '');
  const joined = words
    .map((word, index) => {
      const lower = word.toLowerCase();
      return index === 0 ? lower : lower.charAt(0).toUpperCase() + lower.slice(1);
    })
    .join('');
  return /^[a-z]/.test(joined) ? joined : `n${joined}`;
}

/** Lamps that stay dark when the key is turned on: they light only with what they warn of. */
const DARK_AT_KEY_ON: readonly string[] = ['waterInFuel'];

export const lampOf = (name: string) => {
  const id = idOf(name);
  return {
    id,
    name,
    keyOn: DARK_AT_KEY_ON.includes(id) ? ('off' as const) : ('on' as const),
    running: 'off' as const,
  };
};

/** The name of the lamp that a heater or glow plugs are waited for by. */
export const WAIT_LAMP = 'wait to start';
