import fc from 'fast-check';
import { expect } from 'vitest';
import type { Result } from '../../src/engineering/result.ts';

/**
 * A number between two others, ends included: mostly spread evenly, because doubles drawn by their bits are
 * nearly all tiny, and partly those, for the corners.
 */
export const between = (min: number, max: number) =>
  fc.oneof(
    {
      weight: 4,
      arbitrary: fc.integer({ min: 0, max: 1_000_000 }).map(n => min + ((max - min) * n) / 1_000_000),
    },
    { weight: 1, arbitrary: fc.double({ min, max, noNaN: true }) },
  );

/** Anything a reading could turn out to be: absent, NaN, infinite, absurd, or plausible. */
export const anyReading = fc.oneof(
  { weight: 1, arbitrary: fc.constant(undefined) },
  { weight: 3, arbitrary: fc.double() },
  { weight: 4, arbitrary: between(-100, 200) },
  { weight: 2, arbitrary: between(0, 1) },
);

/** A sound set of inputs with one of them, any one, turned into anything. */
export const oneSpoilt = <T extends object>(sound: T) =>
  fc
    .tuple(fc.constantFrom(...Object.keys(sound)), anyReading)
    .map(([name, value]) => ({ ...sound, [name]: value }));

const onlyFinite = (value: unknown): boolean => {
  if (typeof value === 'number') return Number.isFinite(value);
  if (typeof value === 'object' && value !== null) return Object.values(value).every(onlyFinite);
  return true;
};

/** An answer holds finite numbers throughout and names its rule; a refusal names the input and a reason. */
export function expectSound(result: Result<unknown>): void {
  if (result.ok) {
    expect(onlyFinite(result.value)).toBe(true);
    expect(result.rule.source).not.toBe('');
    expect(result.rule.validity).not.toBe('');
  } else {
    expect(result.issue.input).not.toBe('');
    expect(onlyFinite(result.issue)).toBe(true);
  }
}

/** The value of a result that must be one. */
export function valueFrom<T>(result: Result<T>): T {
  if (!result.ok) throw new Error(`refused: ${JSON.stringify(result.issue)}`);
  return result.value;
}
