import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { nearestPairs, wordingDistance } from '../../../bench/confusions/pairs.ts';
import { phoneDistance, spellingDistance } from '../../../bench/confusions/phones.ts';
import { pronounceEnglish } from '../../../src/voice/languages/pronunciations/english.ts';
import { phonesOf } from '../../../src/voice/phone-network/phones.ts';

const english = wordingDistance('en', pronounceEnglish);
const somePhones = fc.array(fc.constantFrom(...phonesOf.en), { minLength: 1, maxLength: 5 });

describe('the distance of wordings', () => {
  it('is the same both ways, none to itself, and some to all others: every phone of the network is known', () => {
    fc.assert(
      fc.property(somePhones, somePhones, (one, other) => {
        const distance = spellingDistance('en', one, other);
        expect(distance).toBeCloseTo(spellingDistance('en', other, one), 9);
        expect(distance === 0).toBe(one.join(' ') === other.join(' '));
        expect(spellingDistance('en', one, one)).toBe(0);
      }),
    );
    for (const one of phonesOf.en) {
      for (const other of phonesOf.en) expect(phoneDistance('en', one, other)).toBeLessThanOrEqual(1);
    }
  });

  it('is small where people mishear, and large where they do not', () => {
    expect(english('fifteen', 'fifty')).toBeLessThan(english('fifteen', 'twelve'));
    expect(phoneDistance('en', 'M', 'N')).toBeLessThan(phoneDistance('en', 'M', 'S'));
    expect(phoneDistance('en', 'P', 'B')).toBeLessThan(phoneDistance('en', 'P', 'IY'));
    expect(english('lit', 'dark')).toBeGreaterThan(1.5);
  });
});

describe('the nearest pairs of a grammar', () => {
  const grammar = {
    key: 'k',
    stop: ['stop'],
    replies: [
      { id: 'skip', wordings: ['skip', 'skip this'] },
      { id: 'ready', wordings: ['ready', 'we are ready'] },
    ],
    number: { id: 'n', leads: [], units: [], min: 0, max: 99, step: 1 },
  };
  const pairs = nearestPairs(grammar, english, 2).map(({ one, other }) => `${one}, ${other}`);

  it('hold what means something else only, numbers too, and not two ways to say one digit', () => {
    expect(pairs).toContain('stop, skip');
    expect(pairs).toContain('fifteen, fifty');
    expect(pairs.filter(pair => pair.includes('ready'))).toEqual([]);
    expect(pairs).not.toContain('nine, niner');
    expect(pairs).not.toContain('oh, zero');
  });
});
