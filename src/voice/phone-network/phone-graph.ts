import { outputOf } from './phones.ts';

/** One phone of one word at one place of what may be said. */
export interface PhoneState {
  /** Output of the network that stands for it. */
  readonly output: number;
  readonly beginsWord: boolean;
  readonly next: PhoneState[];
  /** The wording that may have been said with this phone. */
  ends: string | undefined;
}

/** Every pronunciation of a word, in the phones of the CMU dictionary, apart by spaces; none when it is unknown. */
export type Pronounce = (word: string) => readonly string[];

/** The phones of a word one after the other; none when the network does not know one of them. */
function chain(phones: string): readonly PhoneState[] {
  const states: PhoneState[] = [];
  for (const output of phones.split(' ').map(outputOf)) {
    if (output === undefined) return [];
    const state: PhoneState = {
      output,
      beginsWord: states.length === 0,
      next: [],
      ends: undefined,
    };
    states.at(-1)?.next.push(state);
    states.push(state);
  }
  return states;
}

/**
 * Spells wordings in phones, each word in all of its pronunciations. A wording with a word that nobody can pronounce is
 * left out.
 * @returns the phones that may come first
 */
export function phoneGraphOf(wordings: readonly string[], pronounce: Pronounce): readonly PhoneState[] {
  return wordings.flatMap(wording => {
    let next: readonly PhoneState[] = [];
    for (const word of wording.split(' ').toReversed()) {
      const chains = pronounce(word)
        .map(chain)
        .filter(states => states.length > 0);
      if (chains.length === 0) return [];
      const isLast = next.length === 0;
      for (const states of chains) {
        const last = states.at(-1);
        if (last === undefined) continue;
        last.ends = isLast ? wording : undefined;
        last.next.push(...next);
      }
      next = chains.flatMap(states => states.slice(0, 1));
    }
    return next;
  });
}
