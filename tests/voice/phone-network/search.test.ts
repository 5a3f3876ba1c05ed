import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { phoneGraphOf } from '../../../src/voice/phone-network/phone-graph.ts';
import { Search } from '../../../src/voice/phone-network/search.ts';
import { WordGraph } from '../../../src/voice/phone-network/word-graph.ts';
import { certain, spelled } from './sounds.ts';

/** Five phones, blank before them; all others are as good as impossible. */
const usedOutputs = 6;
const dictionary: Readonly<Record<string, readonly string[]>> = {
  a: ['AA', 'AE'],
  b: ['AH AO', 'AW'],
  c: ['AA AA'],
  d: ['AO AH AE', 'AH AO'],
};
const pronounce = (word: string) => dictionary[word] ?? [];
const outputs: Readonly<Record<string, number>> = { AA: 1, AE: 2, AH: 3, AO: 4, AW: 5 };

/** Moments with random probabilities of blank and five phones. */
const moments = fc.array(
  fc.array(fc.double({ min: 0.01, max: 1, noNaN: true }), { minLength: usedOutputs, maxLength: usedOutputs }),
  { minLength: 1, maxLength: 6 },
);
const asMoment = (weights: readonly number[]) => {
  const sum = weights.reduce((a, b) => a + b, 0);
  return Float32Array.from({ length: 40 }, (_, i) => Math.log((weights[i] ?? 1e-9) / sum));
};

/** A phone, and whether it may be said together with the same one before it: as the first of several of a word. */
interface Spelled {
  readonly phone: number;
  readonly flows: boolean;
}

/** The best alignment of some phones with moments, tried one by one: what the search has to find in one pass. */
function bestAlignment(phones: readonly Spelled[], heard: readonly Float32Array[], talkCost: number): number {
  const against = heard.map(moment => {
    const best = Math.max(...moment);
    return (output: number) => (moment[output] as number) - best;
  });
  const talk = (at: (output: number) => number) => Math.max(at(0), -talkCost);
  let best = Number.NEGATIVE_INFINITY;
  /** All ways to put blank or one of the phones in each of the moments from `from` up to `to` that spell the phones. */
  const align = (from: number, to: number, place: number, last: number, score: number): void => {
    if (from === to) {
      if (place === phones.length) best = Math.max(best, score);
      return;
    }
    const at = against[from] as (output: number) => number;
    align(from + 1, to, place, 0, score + at(0));
    if (last !== 0) align(from + 1, to, place, last, score + at(last));
    const next = phones[place];
    if (next !== undefined && (next.phone !== last || next.flows))
      align(from + 1, to, place + 1, next.phone, score + at(next.phone));
  };
  for (let begin = 0; begin < heard.length; begin++) {
    for (let end = begin + 1; end <= heard.length; end++) {
      const around = [...against.slice(0, begin), ...against.slice(end)].reduce(
        (sum, at) => sum + talk(at),
        0,
      );
      align(begin, end, 0, 0, around);
    }
  }
  return best;
}

const spelledWord = (phones: readonly string[]): readonly Spelled[] =>
  phones.map((phone, i) => ({ phone: outputs[phone] as number, flows: i === 0 && phones.length > 1 }));

const spellingsOf = (wording: string): readonly (readonly Spelled[])[] =>
  wording
    .split(' ')
    .map(word => pronounce(word).map(phones => spelledWord(phones.split(' '))))
    .reduce<readonly (readonly Spelled[])[]>(
      (starts, ways) => starts.flatMap(start => ways.map(way => [...start, ...way])),
      [[]],
    );

const searchFor = (wordings: readonly string[], talkCost: number, beam = 1_000) =>
  new Search(phoneGraphOf(new WordGraph().wordings(wordings), pronounce), { beam, talkCost });

describe('the search', () => {
  const someWordings = fc.uniqueArray(fc.constantFrom('a', 'b', 'c', 'd', 'a b', 'a a', 'b a d', 'c c'), {
    minLength: 1,
    maxLength: 3,
  });

  it('finds the score of every wording that trying all alignments finds, with other talk around it', () => {
    fc.assert(
      fc.property(
        someWordings,
        moments,
        fc.double({ min: 0, max: 3, noNaN: true }),
        (wordings, weights, talkCost) => {
          const heard = weights.map(asMoment);
          const search = searchFor(wordings, talkCost);
          for (const moment of heard) search.next(moment);
          const found = new Map(search.hypotheses().map(({ text, score }) => [text, score]));
          const wanted = wordings
            .map(wording => ({
              wording,
              score: Math.max(...spellingsOf(wording).map(phones => bestAlignment(phones, heard, talkCost))),
            }))
            .filter(({ score }) => Number.isFinite(score));
          expect([...found.keys()].sort()).toEqual(wanted.map(({ wording }) => wording).sort());
          for (const { wording, score } of wanted) expect(found.get(wording)).toBeCloseTo(score, 4);
        },
      ),
      { numRuns: 300 },
    );
  });

  it('gives the same with a beam as without, for what is likely at all', () => {
    fc.assert(
      fc.property(someWordings, moments, (wordings, weights) => {
        const [wide, narrow] = [searchFor(wordings, 1), searchFor(wordings, 1, 20)];
        for (const moment of weights.map(asMoment)) {
          wide.next(moment);
          narrow.next(moment);
        }
        const [best] = wide.hypotheses();
        if (best !== undefined && best.score > -15) expect(narrow.hypotheses()[0]).toEqual(best);
      }),
    );
  });

  it('finds wordings in the order of their likelihood, each once, with the scores of their words', () => {
    fc.assert(
      fc.property(someWordings, moments, (wordings, weights) => {
        const search = searchFor(wordings, 1);
        for (const moment of weights.map(asMoment)) search.next(moment);
        const all = search.hypotheses();
        const scores = all.map(({ score }) => score);
        expect(scores).toEqual([...scores].sort((a, b) => b - a));
        expect(new Set(all.map(({ text }) => text)).size).toBe(all.length);
        for (const { words, score } of all) {
          expect(words.reduce((sum, word) => sum + word.score, 0)).toBeGreaterThanOrEqual(score - 1e-6);
          for (const word of words) expect(word.score).toBeLessThanOrEqual(1e-6);
        }
      }),
    );
  });

  it('begins anew as if nothing had been heard', () => {
    fc.assert(
      fc.property(moments, moments, (before, weights) => {
        const [used, fresh] = [searchFor(['a b', 'c'], 1), searchFor(['a b', 'c'], 1)];
        for (const moment of before.map(asMoment)) used.next(moment);
        used.restart();
        for (const moment of weights.map(asMoment)) {
          used.next(moment);
          fresh.next(moment);
        }
        expect(used.hypotheses()).toEqual(fresh.hypotheses());
        expect(used.unfinishedScore).toBe(fresh.unfinishedScore);
      }),
    );
  });

  it('says where words begin and end, what may go on, and what is in the middle of something', () => {
    const search = searchFor(['b', 'b a'], 2);
    const silence = [certain(undefined), certain(undefined)];
    for (const phones of [...silence, ...spelled(['AH AO']), ...silence]) search.next(phones);
    expect(search.hypotheses()[0]).toMatchObject({
      text: 'b',
      score: 0,
      to: 4,
      mayGoOn: true,
      words: [{ word: 'b', phones: 2, from: 2, score: 0 }],
    });
    for (const phones of spelled(['AE'])) search.next(phones);
    expect(search.hypotheses()[0]).toMatchObject({ text: 'b a', mayGoOn: false });
    const cutOff = searchFor(['d'], 2);
    for (const phones of spelled(['AO AH'])) cutOff.next(phones);
    expect(cutOff.unfinishedScore).toBe(0);
    expect(cutOff.hypotheses()[0]?.score ?? Number.NEGATIVE_INFINITY).toBeLessThan(-2);
  });

  it('tells a phone that comes twice from one that lasts, by the blank between the two', () => {
    const heard = (phones: readonly (string | undefined)[]) => {
      const search = searchFor(['a', 'c'], 2);
      for (const phone of phones) search.next(certain(phone));
      return search.hypotheses()[0]?.text;
    };
    expect(heard(['AA', 'AA', 'AA'])).toBe('a');
    expect(heard(['AA', undefined, 'AA'])).toBe('c');
  });

  it('does not grow with what it hears, and goes on as before once it has forgotten what it no longer needs', () => {
    const search = searchFor(['a b', 'c', 'd'], 0, 20);
    const noise = Array.from({ length: 7 }, (_, n) => asMoment([1, 0.4 + n / 20, 0.5, 0.6, 0.3, 0.2]));
    for (let i = 0; i < 12_000; i++) search.next(noise[i % 7] as Float32Array);
    for (const phones of spelled(['AA', 'AW'])) search.next(phones);
    expect([...search.endingNow()].sort((a, b) => b.score - a.score)[0]).toMatchObject({
      text: 'a b',
      score: 0,
    });
  });
});
