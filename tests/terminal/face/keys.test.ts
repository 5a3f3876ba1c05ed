import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { type Key, keysIn } from '../../../src/terminal/face/keys.ts';

const kinds = (chunk: string) => keysIn(chunk).map(({ kind }) => kind);

describe('keys from a terminal', () => {
  it('takes Escape for stop, also when another key was pressed in the same haste', () => {
    for (const hasty of ['', 'a', ' ', '.', '\r', '\x1b', '[', '\x7f', '\x03', 'é'])
      expect(kinds(`\x1b${hasty}`)[0], JSON.stringify(hasty)).toBe('stop');
    expect(kinds('ready\x1b')).toContain('stop');
  });

  it('takes Escape before a cursor key for stop as well', () => {
    expect(kinds('\x1b\x1b[A')).toEqual(['stop', 'up']);
  });

  it('does not take cursor and function keys for Escape', () => {
    expect(kinds('\x1b[A\x1bOA\x1b[B\x1bOB')).toEqual(['up', 'up', 'down', 'down']);
    expect(kinds('\x1b[C\x1b[D\x1bOP\x1b[15~\x1b[1;5C\x1b[I\x1b[?62;1c')).toEqual([]);
  });

  it('reads several keys that arrive together in their order', () => {
    const expected: Key[] = [
      { kind: 'text', text: 'o' },
      { kind: 'text', text: 'k' },
      { kind: 'backspace' },
      { kind: 'enter' },
      { kind: 'interrupt' },
    ];
    expect(keysIn('ok\x7f\r\x03')).toEqual(expected);
  });

  it('never lets a control character into the text', () => {
    fc.assert(
      fc.property(fc.string({ unit: 'binary' }), chunk => {
        for (const key of keysIn(chunk)) if (key.kind === 'text') expect(key.text).not.toMatch(/\p{Cc}/u);
      }),
    );
  });

  it('finds a stop in anything that ends with Escape', () => {
    fc.assert(fc.property(fc.string({ unit: 'binary' }), chunk => kinds(`${chunk}\x1b`).includes('stop')));
  });
});
