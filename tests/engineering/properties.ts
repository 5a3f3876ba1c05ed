import fc from 'fast-check';
import { expect } from 'vitest';
import type { Result } from '../../src/engineering/result.ts';

/** Anything a reading could turn out to be: absent, NaN, infinite, absurd, or plausible. */
export const anyReading = fc.oneof(
  { weight: 1, arbitrary: fc.constant(undefined) },
  { weight: 3, arbitrary: fc.double() },
  { weight: 4, arbitrary: fc.double({ min: -100, max: 200, noNaN: true }) },
  { weight: 2, arbitrary: fc.double({ min: 0, max: 1, noNaN: true }) },
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
