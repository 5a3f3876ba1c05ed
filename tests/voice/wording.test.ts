import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { containsWording, normalizeWording, spokenWordings, wordsOf } from '../../src/voice/wording.ts';

describe('a wording', () => {
  it.each([
    ['Coolant FULL.', 'coolant full'],
    ['forty-two', 'forty two'],
    ['  oil   pressure\t', 'oil pressure'],
    ["that's right", "that's right"],
    ['that’s right', "that's right"],
    ["'stop' it", 'stop it'],
    ["the technicians' turn", 'the technicians turn'],
    ['Kühlmittel voll', 'kühlmittel voll'],
    ['Ku\u0308hlmittel', 'kühlmittel'],
    ['…!?', ''],
  ])('written "%s" is compared as "%s"', (written, compared) => {
    expect(normalizeWording(written)).toBe(compared);
  });

  it('stays as it is once normalized', () => {
    fc.assert(
      fc.property(fc.string({ unit: 'grapheme' }), text => {
        const once = normalizeWording(text);
        expect(normalizeWording(once)).toBe(once);
      }),
    );
  });

  it('without words is no wording', () => {
    expect(spokenWordings(['Stop!', '', ' - ', 'Hold it'])).toEqual(['stop', 'hold it']);
  });

  it('is found among whole words only', () => {
    expect(containsWording('please stop now', 'stop')).toBe(true);
    expect(containsWording('shut it down now', 'shut it down')).toBe(true);
    expect(containsWording('the stopper', 'stop')).toBe(false);
    expect(containsWording('shut it right down', 'shut it down')).toBe(false);
    expect(containsWording('anything', '')).toBe(false);
  });

  it('shares its words with others, each of which counts once', () => {
    expect(wordsOf(['Oil pressure', 'fuel-pressure', '', '!'])).toEqual(['oil', 'pressure', 'fuel']);
  });
});
