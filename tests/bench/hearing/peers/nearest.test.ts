import { describe, expect, it } from 'vitest';
import { farthestFor } from '../../../../bench/hearing/peers/by-nearest.ts';
import type { Cut } from '../../../../bench/hearing/peers/cuts.ts';
import { nearestIn } from '../../../../bench/hearing/peers/nearest.ts';
import { spellingsOf } from '../../../../bench/hearing/peers/spellings.ts';
import type { Meaning } from '../../../../src/voice/meaning.ts';
import type { Grammar } from '../../../../src/voice/ports.ts';

const grammar: Grammar = {
  key: 'gauge',
  stop: ['stop', 'emergency stop'],
  replies: [
    { id: 'yes', wordings: ['yes', 'correct'] },
    { id: 'no', wordings: ['no', 'that is wrong'] },
  ],
  number: { id: 'pressure', leads: [], units: [], min: 0, max: 120, step: 1 },
};

const number = (value: number): Meaning => ({ kind: 'number', id: 'pressure', value });

describe('what a recognizer of free text wrote', () => {
  it.each([
    ['15217', 'one five two one seven'],
    ['1-5-217', 'one five two one seven'],
    ['42.', 'forty two'],
    ['56 05', 'fifty six oh five'],
    ['5605', 'fifty six oh five'],
    ['7D', 'seven d'],
    [' Yes! ', 'yes'],
  ])('%s may be %s', (text, words) => {
    expect(spellingsOf(text)).toContain(words);
  });

  it.each<[string, Meaning]>([
    ['42', number(42)],
    ['Forty-two.', number(42)],
    ['For tea too', number(42)],
    ['Eight.', number(8)],
    ['ate', number(8)],
    ['Emergency, stop!', { kind: 'stop' }],
    ["That's wrong.", { kind: 'reply', id: 'no' }],
  ])('%s is nearest to what it sounds like', (text, meaning) => {
    expect(nearestIn(grammar, text).meaning).toEqual(meaning);
  });

  it('is at no distance from a phrase of its very phones, and farther the more differs', () => {
    expect(nearestIn(grammar, 'no').distance).toBe(0);
    expect(nearestIn(grammar, 'know').distance).toBe(0);
    // Y EH S against Y EH T: one of three.
    expect(nearestIn(grammar, 'yet')).toEqual({ meaning: { kind: 'reply', id: 'yes' }, distance: 1 / 3 });
  });

  it('means nothing where nothing was written, or two meanings are equally near', () => {
    expect(nearestIn(grammar, ' ...').meaning).toBeUndefined();
    const pair: Grammar = {
      key: 'pair',
      stop: [],
      replies: [
        { id: 'a', wordings: ['five'] },
        { id: 'b', wordings: ['nine'] },
      ],
    };
    // Of F AY V and N AY N, "fine" (F AY N) has two each.
    expect(nearestIn(pair, 'fine').meaning).toBeUndefined();
  });
});

describe('how far a phrase may be', () => {
  const cut = (says: string, means: Meaning | undefined): Cut => ({
    utterance: { grammar, says, means, fromSample: 0, toSample: 0, speechEndMs: 0 },
    samples: new Float32Array(),
  });
  it('is as far as most is right beyond what is wrong', () => {
    const cuts = [cut('five', number(5)), cut('nine', number(9)), cut('talk', undefined)];
    const [near, far] = [
      { meaning: number(5), distance: 0 },
      { meaning: number(9), distance: 0.34 },
    ];
    expect(farthestFor(cuts, [near, far, { meaning: number(1), distance: 0.5 }])).toBe(0.34);
    expect(
      farthestFor(cuts, [near, { ...far, meaning: number(5) }, { meaning: undefined, distance: 1 }]),
    ).toBe(0);
  });
});
