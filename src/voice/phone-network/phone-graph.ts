import { outputOf } from './phones.ts';
import type { WordPlace } from './word-graph.ts';

/** Every pronunciation of a word, in the phones of the CMU dictionary, apart by spaces; none when it is unknown. */
export type Pronounce = (word: string) => readonly string[];

/**
 * What may be said, spelled in phones: states one after the other, each one phone of one word. All lists are by state;
 * the states that may come after state `s` are `next[nextFrom[s]]` up to, not with, `next[nextTo[s]]`.
 */
export interface PhoneGraph {
  readonly stateCount: number;
  /** Output of the network. */
  readonly output: Uint8Array;
  readonly nextFrom: Int32Array;
  readonly nextTo: Int32Array;
  readonly next: Int32Array;
  /** The states that may come first. */
  readonly first: Int32Array;
  /** Index of the word that begins with this state, or -1. */
  readonly wordBegun: Int32Array;
  /** Number of phones of the word that begins with this state. */
  readonly wordLength: Uint8Array;
  readonly words: readonly string[];
  /** 1 where a word is over with this state. */
  readonly wordOver: Uint8Array;
  /** 1 where what was said up to this state, and with it, may be all. */
  readonly mayEnd: Uint8Array;
  /** 1 where something may follow on that. */
  readonly mayGoOn: Uint8Array;
}

/** The words that may be said from here on. */
export function wordsFrom(start: WordPlace): readonly string[] {
  const words = new Set<string>();
  const seen = new Set<WordPlace>();
  const visit = (place: WordPlace) => {
    if (seen.has(place)) return;
    seen.add(place);
    for (const { word, to } of place.next) {
      words.add(word);
      visit(to);
    }
  };
  visit(start);
  return [...words];
}

/** A word on the way to a place. Whatever leads to the word, its states are the same. */
interface Chain {
  readonly firstStates: readonly number[];
}

/**
 * Spells what may be said from a place on, each word in all of its pronunciations. A word that nobody can pronounce
 * leads nowhere.
 * @param pronounce pronunciations in the phones of the network
 */
export function phoneGraphOf(start: WordPlace, pronounce: Pronounce): PhoneGraph {
  const output: number[] = [];
  const nextFrom: number[] = [];
  const nextTo: number[] = [];
  const next: number[] = [];
  const wordBegun: number[] = [];
  const wordLength: number[] = [];
  const wordOver: number[] = [];
  const mayEnd: number[] = [];
  const mayGoOn: number[] = [];
  const words: string[] = [];
  const wordIndex = new Map<string, number>();
  const spelled = new Map<string, readonly (readonly number[])[]>();
  const entries = new Map<WordPlace, { readonly from: number; readonly to: number }>();
  const chains = new Map<string, Chain>();

  const indexOf = (word: string) => {
    const index = wordIndex.get(word) ?? words.push(word) - 1;
    wordIndex.set(word, index);
    return index;
  };
  const spellingsOf = (word: string) => {
    const known =
      spelled.get(word) ??
      pronounce(word)
        .map(phones => phones.split(' ').map(outputOf))
        .filter((outputs): outputs is number[] => outputs.every(each => each !== undefined));
    spelled.set(word, known);
    return known;
  };

  function chainOf(word: string, place: WordPlace): Chain {
    const key = `${word}>${place.id}`;
    const known = chains.get(key);
    if (known !== undefined) return known;
    const after = entriesOf(place);
    const firstStates = spellingsOf(word).map(outputs => {
      const first = output.length;
      outputs.forEach((each, i) => {
        const state = output.push(each) - 1;
        const isLast = i === outputs.length - 1;
        nextFrom.push(isLast ? after.from : next.length);
        if (!isLast) next.push(state + 1);
        nextTo.push(isLast ? after.to : next.length);
        wordBegun.push(i === 0 ? indexOf(word) : -1);
        wordLength.push(outputs.length);
        wordOver.push(isLast ? 1 : 0);
        mayEnd.push(isLast && place.mayEnd ? 1 : 0);
        mayGoOn.push(after.to > after.from ? 1 : 0);
      });
      return first;
    });
    const chain = { firstStates };
    chains.set(key, chain);
    return chain;
  }

  function entriesOf(place: WordPlace): { readonly from: number; readonly to: number } {
    const known = entries.get(place);
    if (known !== undefined) return known;
    const states = place.next.flatMap(({ word, to }) => chainOf(word, to).firstStates);
    const from = next.length;
    for (const state of states) next.push(state);
    const range = { from, to: next.length };
    entries.set(place, range);
    return range;
  }

  const { from, to } = entriesOf(start);
  return {
    stateCount: output.length,
    output: Uint8Array.from(output),
    nextFrom: Int32Array.from(nextFrom),
    nextTo: Int32Array.from(nextTo),
    next: Int32Array.from(next),
    first: Int32Array.from(next.slice(from, to)),
    wordBegun: Int32Array.from(wordBegun),
    wordLength: Uint8Array.from(wordLength),
    words,
    wordOver: Uint8Array.from(wordOver),
    mayEnd: Uint8Array.from(mayEnd),
    mayGoOn: Uint8Array.from(mayGoOn),
  };
}
