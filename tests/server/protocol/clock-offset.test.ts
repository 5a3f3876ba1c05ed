import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { clockOffset } from '../../../src/server/protocol/index.ts';

describe('The offset between two clocks', () => {
  test('is wrong by no more than half of the shortest round trip', () => {
    const delay = fc.nat(500);
    fc.assert(
      fc.property(
        fc.integer({ min: -100_000, max: 100_000 }),
        fc.array(fc.tuple(delay, delay), { minLength: 1, maxLength: 5 }),
        (offsetMs, delays) => {
          const exchanges = delays.map(([thereMs, backMs], index) => {
            const trueMs = 1e6 + index * 1000;
            return {
              sentMs: trueMs + offsetMs,
              serverMs: trueMs + thereMs,
              receivedMs: trueMs + thereMs + backMs + offsetMs,
            };
          });
          const shortestMs = Math.min(...delays.map(([thereMs, backMs]) => thereMs + backMs));
          const found = clockOffset(exchanges);
          expect(found?.roundTripMs).toBe(shortestMs);
          expect(Math.abs((found?.offsetMs ?? Number.NaN) - offsetMs)).toBeLessThanOrEqual(shortestMs / 2);
        },
      ),
    );
  });

  test('is not known from nothing, nor from an answer that came before its question', () => {
    expect(clockOffset([])).toBeNull();
    expect(clockOffset([{ sentMs: 10, receivedMs: 9, serverMs: 10 }])).toBeNull();
    expect(clockOffset([{ sentMs: 10, receivedMs: 12, serverMs: Number.NaN }])).toBeNull();
  });
});
