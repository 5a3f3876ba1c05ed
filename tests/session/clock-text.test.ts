import { describe, expect, it } from 'vitest';
import { elapsedText, leftText } from '../../src/session/clock-text.ts';

describe('time that has passed', () => {
  it('counts a second when it is over', () => {
    expect(elapsedText(999)).toBe('00:00');
    expect(elapsedText(1000)).toBe('00:01');
    expect(elapsedText(59_600)).toBe('00:59');
  });

  it('goes on counting minutes beyond an hour, and is never less than none', () => {
    expect(elapsedText(3_661_000)).toBe('61:01');
    expect(elapsedText(-5)).toBe('00:00');
  });
});

describe('time that is left', () => {
  it('shows 00:00 only when it is over', () => {
    expect(leftText(400)).toBe('00:01');
    expect(leftText(59_600)).toBe('01:00');
    expect(leftText(0)).toBe('00:00');
    expect(leftText(-400)).toBe('00:00');
  });

  it('shows dashes where nobody knows', () => {
    expect(leftText(Number.POSITIVE_INFINITY)).toBe('--:--');
    expect(leftText(Number.NaN)).toBe('--:--');
  });
});
