import { describe, expect, it } from 'vitest';
import { certaintyOf } from '../../../../src/voice/decoders/soundswallower/certainty.ts';

const yes = (b: number, p = 0.92) => ({ t: 'yes', b, d: 0.4, p });
const silence = (b: number, d: number) => ({ t: '<sil>', b, d, p: 0.9 });

describe('certainty', () => {
  it('is that of the least certain word', () => {
    expect(certaintyOf([silence(0, 0.3), yes(0.3, 0.95), yes(0.7, 0.85), silence(1.1, 0.2)])).toBe(0.85);
  });

  it('does not depend on silences, noises and null transitions', () => {
    const nothing = { t: '(NULL)', b: 0.3, d: 0.01, p: 0.01 };
    const noise = { t: '[NOISE]', b: 0.7, d: 0.2, p: 0.01 };
    expect(certaintyOf([silence(0, 0.3), nothing, yes(0.3), noise])).toBe(0.92);
  });

  it('is none without a word', () => {
    expect(certaintyOf([])).toBe(0);
    expect(certaintyOf([silence(0, 0.4)])).toBe(0);
  });

  it('is none where silence before, between or after the words is longer than an utterance can be silent', () => {
    expect(certaintyOf([silence(0, 0.9), yes(0.9)])).toBe(0);
    expect(certaintyOf([yes(0.3), silence(0.7, 0.6), yes(1.3)])).toBe(0);
    expect(certaintyOf([yes(0.3), silence(0.7, 1.3)])).toBe(0);
  });

  it('bears the silences that an utterance may have', () => {
    expect(certaintyOf([silence(0, 0.7), yes(0.7), silence(1.1, 0.45), yes(1.55), silence(1.95, 0.4)])).toBe(
      0.92,
    );
  });

  it('is none where a time is no number', () => {
    expect(certaintyOf([yes(Number.NaN)])).toBe(0);
  });
});
