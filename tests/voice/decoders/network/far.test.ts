import { describe, expect, it } from 'vitest';
import { certaintyOf, judge } from '../../../../src/voice/decoders/network/bounds.ts';
import type { Features } from '../../../../src/voice/decoders/network/features.ts';
import { french } from '../../../../src/voice/languages/french.ts';

/** A reply that is as sure as can be, well above the seconds before, from somebody who is hardly near. */
const sure: Features = {
  perPhone: -0.1,
  worstWord: -0.2,
  margin: 12,
  unfinished: 0,
  phones: 12,
  moments: 30,
  phonesBefore: 0,
  phonesAfter: 0,
  near: 0.4,
  leastNear: 0.3,
  riseDb: 15,
};

describe('somebody who is hardly near', () => {
  it('is far when a reply or a number is surely theirs, and is never taken', () => {
    expect(certaintyOf(sure)).toBeGreaterThan(0.9);
    expect(judge(sure, 'reply')).toBe('far');
    expect(judge(sure, 'oneWordNumber')).toBe('far');
  });

  it('is background while they are not sure, hardly rise, say a short word, or agree', () => {
    for (const other of [{ perPhone: -3 }, { riseDb: 5 }, { phones: 5 }])
      expect([other, judge({ ...sure, ...other }, 'reply')]).toEqual([other, 'background']);
    expect(judge(sure, 'agreement')).toBe('background');
  });

  it('is background too where they are only not surely near', () => {
    expect(judge({ ...sure, near: 0.7, riseDb: 3 }, 'reply')).toBe('background');
  });

  it('stops as anybody does', () => {
    expect(judge(sure, 'stop')).toBe('stop');
  });

  it('is not told from background in French, whose bounds were not measured', () => {
    const { leastCertainty, nearBounds } = french.hearing ?? {};
    expect(judge(sure, 'reply', leastCertainty, nearBounds)).not.toBe('far');
  });
});
