import { describe, expect, test } from 'vitest';
import { type FmiSeverity, fmi } from '../../src/engineering/fmi.ts';

interface Meaning {
  readonly number: number;
  readonly words: RegExp;
  readonly severity?: FmiSeverity;
}

/**
 * SAE J1939-73, appendix A (read in public lists of it): the words by which each meaning is told from the
 * others, not the standard's own sentence.
 */
const MEANINGS: readonly Meaning[] = [
  { number: 0, words: /high/, severity: 'most' },
  { number: 1, words: /low/, severity: 'most' },
  { number: 2, words: /makes no sense/ },
  { number: 3, words: /voltage.*high.*supply/ },
  { number: 4, words: /voltage.*low.*ground/ },
  { number: 5, words: /current.*low.*broken/ },
  { number: 6, words: /current.*high.*ground/ },
  { number: 7, words: /does not follow.*adjustment/ },
  { number: 8, words: /frequency.*width.*period/ },
  { number: 9, words: /too often or too rarely/ },
  { number: 10, words: /changes/ },
  { number: 11, words: /not known/ },
  { number: 12, words: /device.*bad/ },
  { number: 13, words: /calibration/ },
  { number: 14, words: /special/ },
  { number: 15, words: /high/, severity: 'least' },
  { number: 16, words: /high/, severity: 'moderate' },
  { number: 17, words: /low/, severity: 'least' },
  { number: 18, words: /low/, severity: 'moderate' },
  { number: 19, words: /network/ },
  { number: 20, words: /drifted high/ },
  { number: 21, words: /drifted low/ },
  { number: 31, words: /condition exists/ },
];

describe('failure modes mean what SAE J1939-73 says they mean', () => {
  test.each(MEANINGS)('FMI $number', ({ number, words, severity }) => {
    const mode = fmi(number);
    expect(mode?.text).toMatch(words);
    expect(mode?.severity).toBe(severity);
    expect(mode?.reserved).toBeUndefined();
  });

  test.each([22, 23, 24, 25, 26, 27, 28, 29, 30])('FMI %s is reserved', number => {
    expect(fmi(number)?.reserved).toBe(true);
  });

  test.each([-1, 32, 1.5, Number.NaN])('%s is no FMI', number => {
    expect(fmi(number)).toBeUndefined();
  });

  test('no two meanings share their words', () => {
    const told = MEANINGS.map(({ number }) => `${fmi(number)?.text} ${fmi(number)?.severity}`);
    expect(new Set(told).size).toBe(MEANINGS.length);
  });
});
