import { describe, expect, it } from 'vitest';
import { certaintyOf, judge, nearBounds } from '../../../../src/voice/decoders/network/bounds.ts';
import type { Features } from '../../../../src/voice/decoders/network/features.ts';
import { isFar } from '../../../../src/voice/decoders/network/telling-far.ts';
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
const nothing = { kind: 'nothing' } as const;
const { hardlyNear } = nearBounds;
const far = (more: Partial<Features> = {}) =>
  isFar({ verdict: nothing, stands: 'reply', features: { ...sure, ...more } }, hardlyNear);

describe('somebody who is hardly near', () => {
  it('is far when a reply or a number is surely theirs, which is never taken', () => {
    expect(certaintyOf(sure)).toBeGreaterThan(0.9);
    expect(judge(sure, 'reply')).toBe('background');
    expect(far()).toBe(true);
    expect(isFar({ verdict: nothing, stands: 'oneWordNumber', features: sure }, hardlyNear)).toBe(true);
  });

  it('is nobody while they are not sure, hardly rise, say a short word, agree, or are near', () => {
    for (const other of [{ perPhone: -3 }, { riseDb: 5 }, { phones: 5 }, { near: 0.65 }])
      expect([other, far(other)]).toEqual([other, false]);
    expect(isFar({ verdict: nothing, stands: 'agreement', features: sure }, hardlyNear)).toBe(false);
  });

  it('is not told of where something counted, or a stop was heard', () => {
    const taken = { kind: 'taken', text: 'x', certainty: 1 } as const;
    expect(isFar({ verdict: taken, stands: 'reply', features: sure }, hardlyNear)).toBe(false);
    expect(isFar({ verdict: nothing, stands: 'stop', features: sure }, hardlyNear)).toBe(false);
    expect(isFar({ verdict: nothing }, hardlyNear)).toBe(false);
  });

  it('is not told of in French, whose bounds were not measured', () => {
    const least = french.hearing?.nearBounds?.hardlyNear ?? 1;
    expect(isFar({ verdict: nothing, stands: 'reply', features: { ...sure, near: 0 } }, least)).toBe(false);
  });
});
