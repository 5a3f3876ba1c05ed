import { writeFileSync } from 'node:fs';
import { normalizeWording } from '../../src/voice/wording.ts';

export type Kind =
  | 'reply'
  | 'control'
  | 'number'
  | 'digits'
  | 'stop'
  | 'near'
  | 'carrier'
  | 'talk'
  | 'words'
  | 'long';
/** 2 for what decides most, 1 for what else is asked for as it stands, 0 for what is made of it. */
export type Weight = 0 | 1 | 2;

/**
 * Different texts, each with its kind and weight.
 * @param canBeSaid whether a text, as it would be kept, can be pronounced
 */
export function collection(canBeSaid: (said: string) => boolean) {
  const made = new Map<string, { readonly kind: Kind; readonly base: Weight }>();

  /** Keeps a text once, if it can be pronounced; says whether it was new. */
  function keep(kind: Kind, base: Weight, text: string): boolean {
    const said = text
      .split(',')
      .map(normalizeWording)
      .filter(part => part !== '')
      .join(', ');
    if (said === '' || made.has(said) || !canBeSaid(said)) return false;
    made.set(said, { kind, base });
    return true;
  }

  /** Keeps so many different texts, or as many as come of eight times as many tries. */
  function many(kind: Kind, count: number, make: () => string): void {
    for (let kept = 0, tried = 0; kept < count && tried < count * 8; tried += 1) {
      if (keep(kind, 0, make())) kept += 1;
    }
  }

  return {
    keep,
    many,
    get size() {
      return made.size;
    },
    write: (path: string) =>
      writeFileSync(
        path,
        [...made].map(([say, { kind, base }]) => `${JSON.stringify({ kind, base, say })}\n`).join(''),
      ),
  };
}
