import { createMatcher, isMeant, type Meaning } from '../../src/voice/meaning.ts';
import { formsOf } from '../../src/voice/number-words/slot.ts';
import type { Grammar, HeardLanguage, NumberSlot } from '../../src/voice/ports.ts';
import { spokenWordings } from '../../src/voice/wording.ts';
import { spellingDistance } from './phones.ts';

/** Two things that may be said in one state, mean something else, and sound alike. */
export interface Pair {
  readonly one: string;
  readonly other: string;
  /** In phones: how many would have to be heard as quite another one. */
  readonly distance: number;
  /** Words of numbers, one of which would have to stand where the other does. */
  readonly inNumbers: boolean;
}

export type Spell = (word: string) => readonly string[];

/** The usual pronunciations of a word, which stand first; all of them, in every word of a wording, are too many to compare. */
const USUAL = 2;

/** All spellings of a wording, each as its phones. */
function spellingsOf(wording: string, spell: Spell): readonly (readonly string[])[] {
  return wording.split(' ').reduce<readonly (readonly string[])[]>(
    (starts, word) =>
      starts.flatMap(start =>
        spell(word)
          .slice(0, USUAL)
          .map(phones => [...start, ...phones.split(' ')]),
      ),
    [[]],
  );
}

/** How far two wordings are from one another in their nearest pronunciations; what was asked before is remembered. */
export function wordingDistance(
  language: HeardLanguage,
  spell: Spell,
): (one: string, other: string) => number {
  const spelled = new Map<string, readonly (readonly string[])[]>();
  const spellings = (wording: string) => {
    const known = spelled.get(wording) ?? spellingsOf(wording, spell);
    spelled.set(wording, known);
    return known;
  };
  const distances = new Map<string, number>();
  return (one, other) => {
    const key = `${one}|${other}`;
    const known =
      distances.get(key) ??
      Math.min(...spellings(one).flatMap(a => spellings(other).map(b => spellingDistance(language, a, b))));
    distances.set(key, known);
    return known;
  };
}

/** Words that may stand at the same place of a number: after the same words, and before the same. */
function exchangeable(slot: NumberSlot): ReadonlySet<string> {
  const found = new Set<string>();
  const places = new Map<string, Set<string>>();
  for (const form of formsOf(slot)) {
    form.forEach((token, i) => {
      const around = JSON.stringify([form.slice(0, i), form.slice(i + 1)]);
      const words = places.get(around) ?? new Set();
      for (const word of token) if (word !== '') words.add(word);
      places.set(around, words);
    });
  }
  for (const words of places.values()) {
    const all = [...words];
    all.forEach((one, i) => {
      for (const other of all.slice(i + 1)) found.add([one, other].sort().join('|'));
    });
  }
  return found;
}

/** Different ways to say one digit. */
const sameDigit = (slot: NumberSlot, one: string, other: string) => {
  const alone = createMatcher({
    key: 'digit',
    stop: [],
    replies: [],
    ...(slot.language === undefined ? {} : { language: slot.language }),
    number: { ...slot, leads: [], units: [], leadNeeded: false, digitsOnly: true, min: 0, max: 99, step: 1 },
  });
  const [a, b] = [one, other].map(word => alone.meaningOf(`${word} ${word}`));
  return a !== undefined && b !== undefined && isMeant(a, b);
};

/**
 * The pairs of a grammar that are nearer to one another than this, the nearest first.
 * @param distance of two wordings, as `wordingDistance` makes it
 */
export function nearestPairs(
  grammar: Grammar,
  distance: (one: string, other: string) => number,
  within: number,
): readonly Pair[] {
  const { meaningOf } = createMatcher(grammar);
  const wordings = [
    ...new Set(spokenWordings([...grammar.stop, ...grammar.replies.flatMap(reply => reply.wordings)])),
  ];
  const said = wordings.map(text => ({ text, meaning: meaningOf(text) }));
  const differ = (a: Meaning | undefined, b: Meaning | undefined) => !a || !b || !isMeant(a, b);
  const pairs: Pair[] = [];
  said.forEach(({ text: one, meaning }, i) => {
    for (const { text: other, meaning: otherMeaning } of said.slice(i + 1)) {
      if (!differ(meaning, otherMeaning)) continue;
      pairs.push({ one, other, distance: distance(one, other), inNumbers: false });
    }
  });
  const { number } = grammar;
  if (number !== undefined) {
    for (const pair of exchangeable(number)) {
      const [one = '', other = ''] = pair.split('|');
      if (sameDigit(number, one, other)) continue;
      pairs.push({ one, other, distance: distance(one, other), inNumbers: true });
    }
  }
  return pairs.filter(pair => pair.distance <= within).sort((a, b) => a.distance - b.distance);
}
