import { wordPhones } from '../../../acoustic-model/dictionary.ts';
import { grammarGraph } from '../../../src/voice/decoders/network/grammar-graph.ts';
import { pronounceEnglish } from '../../../src/voice/languages/pronunciations/english.ts';
import { isMeant, type Meaning, matcherOf } from '../../../src/voice/meaning.ts';
import { type PhoneGraph, phoneGraphOf } from '../../../src/voice/phone-network/phone-graph.ts';
import { outputOf } from '../../../src/voice/phone-network/phones.ts';
import type { Grammar } from '../../../src/voice/ports.ts';
import { spellingsOf } from './spellings.ts';

/** The phrase of a grammar that a text is nearest to. */
export interface Nearest {
  /** Undefined where nothing may be said, or two phrases of different meanings are equally near. */
  readonly meaning: Meaning | undefined;
  /** Phones to be put in, left out or changed, for each phone of the text. */
  readonly distance: number;
}

/** A phone of a word that no dictionary has: it is like no other. */
const strange = -1;

const outputsOf = (phones: string) => phones.split(' ').map(phone => outputOf(phone) ?? strange);

/** The phones of a text, each word in its first pronunciation; a word that nobody knows counts by its letters. */
const phonesOf = (text: string): readonly number[] =>
  text
    .split(' ')
    .filter(word => word !== '')
    .flatMap(word => {
      const [phones] = wordPhones(word) ?? [];
      return phones === undefined ? [...word].map(() => strange) : outputsOf(phones);
    });

interface Way {
  readonly cost: number;
  readonly words: string;
}

/** The states of a graph, each after all that lead to it. */
function inOrder(graph: PhoneGraph): readonly number[] {
  const seen = new Set<number>();
  const order: number[] = [];
  const visit = (state: number) => {
    if (seen.has(state)) return;
    seen.add(state);
    for (let n = graph.nextFrom[state] as number; n < (graph.nextTo[state] as number); n++) {
      visit(graph.next[n] as number);
    }
    order.push(state);
  };
  graph.first.forEach(visit);
  return order.reverse();
}

interface Ordered {
  readonly graph: PhoneGraph;
  readonly order: readonly number[];
}

const graphs = new Map<string, Ordered>();

function orderedOf(grammar: Grammar): Ordered {
  const key = JSON.stringify(grammar);
  const known = graphs.get(key);
  if (known !== undefined) return known;
  const graph = phoneGraphOf(grammarGraph(grammar), pronounceEnglish);
  const ordered = { graph, order: inOrder(graph) };
  graphs.set(key, ordered);
  return ordered;
}

/**
 * The ways through a grammar that differ least from some phones (Levenshtein's distance, over a graph): of each state in
 * which what is said may be over, the cheapest.
 */
function waysTo(phones: readonly number[], { graph, order }: Ordered): readonly Way[] {
  const { output, wordBegun, words, next, nextFrom, nextTo, mayEnd } = graph;
  const isFirst = new Set(graph.first);
  const entering = (way: Way | undefined, state: number, cost: number): Way | undefined => {
    if (way === undefined) return undefined;
    const word = wordBegun[state] as number;
    return { cost: way.cost + cost, words: word < 0 ? way.words : `${way.words} ${words[word]}`.trim() };
  };
  let before = new Map<number, Way>();
  for (let heard = 0; heard <= phones.length; heard++) {
    const phone = heard === 0 ? undefined : phones[heard - 1];
    const now = new Map<number, Way>();
    const offer = (state: number, way: Way | undefined) => {
      if (way !== undefined && way.cost < (now.get(state)?.cost ?? Number.POSITIVE_INFINITY))
        now.set(state, way);
    };
    const changed = (state: number) => (output[state] === phone ? 0 : 1);
    for (const state of order) {
      if (isFirst.has(state)) {
        // Nothing of the grammar yet: what was heard so far was too much.
        if (phone !== undefined)
          offer(state, entering({ cost: heard - 1, words: '' }, state, changed(state)));
        offer(state, entering({ cost: heard, words: '' }, state, 1));
      }
      const stayed = before.get(state);
      if (phone !== undefined && stayed !== undefined) offer(state, { ...stayed, cost: stayed.cost + 1 });
      const [here, earlier] = [now.get(state), before.get(state)];
      for (let n = nextFrom[state] as number; n < (nextTo[state] as number); n++) {
        const other = next[n] as number;
        if (phone !== undefined) offer(other, entering(earlier, other, changed(other)));
        offer(other, entering(here, other, 1));
      }
    }
    before = now;
  }
  return [...before].filter(([state]) => mayEnd[state] === 1).map(([, way]) => way);
}

/** The phrase of a grammar that is nearest to what a recognizer of free text wrote, by its phones. */
export function nearestIn(grammar: Grammar, text: string): Nearest {
  const ordered = orderedOf(grammar);
  const { meaningOf } = matcherOf(grammar);
  let least = Number.POSITIVE_INFINITY;
  let meanings: (Meaning | undefined)[] = [];
  for (const spelling of spellingsOf(text)) {
    const phones = phonesOf(spelling);
    if (phones.length === 0) continue;
    for (const { cost, words } of waysTo(phones, ordered)) {
      const distance = cost / phones.length;
      if (distance > least) continue;
      if (distance < least) meanings = [];
      least = distance;
      meanings.push(meaningOf(words));
    }
  }
  const [meaning] = meanings;
  const agree =
    meaning !== undefined && meanings.every(other => other !== undefined && isMeant(meaning, other));
  return { meaning: agree ? meaning : undefined, distance: least };
}
