export type Key =
  | { readonly kind: 'text'; readonly text: string }
  | { readonly kind: 'stop' | 'enter' | 'backspace' | 'interrupt' | 'end' | 'up' | 'down' };

/** Cursor keys and other control sequences, complete: CSI ... final byte, or SS3 and a letter. */
// biome-ignore lint/suspicious/noControlCharactersInRegex: the escape character is what is looked for
const SEQUENCE = /^\x1b(?:\[[0-?]*[ -/]*[@-~]|O[A-Za-z])/;
const ESCAPE = '\x1b';

const named: Readonly<Record<string, Key>> = {
  '\r': { kind: 'enter' },
  '\n': { kind: 'enter' },
  '\x7f': { kind: 'backspace' },
  '\b': { kind: 'backspace' },
  '\x03': { kind: 'interrupt' },
  // Ctrl-D: the end of what is typed.
  '\x04': { kind: 'end' },
  '\x1b[A': { kind: 'up' },
  '\x1bOA': { kind: 'up' },
  '\x1b[B': { kind: 'down' },
  '\x1bOB': { kind: 'down' },
};

/**
 * The keys in what a terminal sent at once. An escape character that does not begin a complete control
 * sequence is the Escape key and means stop, whatever follows it: several keys pressed in haste arrive
 * together, and a stop too many is better than one too few. Unknown sequences and control characters do
 * nothing.
 */
export function keysIn(chunk: string): Key[] {
  const keys: Key[] = [];
  let rest = chunk;
  while (rest !== '') {
    const sequence = SEQUENCE.exec(rest)?.[0];
    const [first = ''] = rest;
    const token = sequence ?? first;
    rest = rest.slice(token.length);
    const known = named[token];
    if (known) keys.push(known);
    else if (token === ESCAPE) keys.push({ kind: 'stop' });
    else if (!sequence && !/\p{Cc}/u.test(token)) keys.push({ kind: 'text', text: token });
  }
  return keys;
}
