import type { Key } from './keys.ts';

/** The line being typed, the lines sent before it, and whether Ctrl-C was pressed once. */
export interface Typing {
  readonly typed: string;
  readonly sent: readonly string[];
  /** How far back in `sent` the typed line comes from; 0 is a new line. */
  readonly back: number;
  readonly leaving: boolean;
}

export type Act = { readonly kind: 'type'; readonly text: string } | { readonly kind: 'stop' | 'leave' };

interface Pressed {
  readonly typing: Typing;
  readonly act: Act | null;
}

const MOST_SENT = 50;
const LONGEST_LINE = 500;

export const nothingTyped: Typing = { typed: '', sent: [], back: 0, leaving: false };

const dropLast = (text: string) => [...text].slice(0, -1).join('');

function recall(typing: Typing, back: number): Typing {
  const reached = Math.min(Math.max(0, back), typing.sent.length);
  return { ...typing, back: reached, typed: reached === 0 ? '' : (typing.sent.at(-reached) ?? '') };
}

/** What a key does to the line, and what it asks of the session. Stop works whatever is typed. */
export function press(before: Typing, key: Key): Pressed {
  const typing = { ...before, leaving: false };
  const only = (changed: Typing): Pressed => ({ typing: changed, act: null });
  switch (key.kind) {
    case 'stop':
      return { typing: { ...typing, typed: '', back: 0 }, act: { kind: 'stop' } };
    case 'interrupt':
      return before.leaving ? { typing: before, act: { kind: 'leave' } } : only({ ...typing, leaving: true });
    // It asks as Ctrl-C does, and only Ctrl-C leaves, as the line says.
    case 'end':
      return only({ ...typing, leaving: !before.leaving });
    case 'enter': {
      const text = typing.typed.trim();
      const emptied = { ...typing, typed: '', back: 0 };
      if (text === '') return only(emptied);
      return {
        typing: { ...emptied, sent: [...typing.sent, text].slice(-MOST_SENT) },
        act: { kind: 'type', text },
      };
    }
    case 'text':
      return only({ ...typing, typed: (typing.typed + key.text).slice(0, LONGEST_LINE) });
    case 'backspace':
      return only({ ...typing, typed: dropLast(typing.typed) });
    case 'up':
      return only(recall(typing, typing.back + 1));
    case 'down':
      return only(recall(typing, typing.back - 1));
  }
}
