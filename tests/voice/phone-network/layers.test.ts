import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { sideBySide, siluInPlace } from '../../../src/voice/phone-network/layers.ts';

describe('rows side by side', () => {
  it('are the last ones, the oldest first, and nothing before the first', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 1, max: 5 }),
        fc.array(fc.float32Array({ minLength: 3, maxLength: 3, noNaN: true }), {
          minLength: 1,
          maxLength: 9,
        }),
        (count, rows) => {
          const next = sideBySide(3, count);
          rows.forEach((row, at) => {
            const expected = Array.from({ length: count }, (_, i) => [
              ...(rows[at - count + 1 + i] ?? [0, 0, 0]),
            ]);
            expect([...next(row)]).toEqual(expected.flat());
          });
        },
      ),
    );
  });
});

describe('the sigmoid linear unit', () => {
  it('is x / (1 + exp(-x)) (Elfwing et al., arXiv:1702.03118)', () => {
    const values = [-20, -1, 0, 1, 20];
    const found = siluInPlace(Float32Array.from(values));
    values.forEach((x, i) => {
      expect(found[i]).toBeCloseTo(x / (1 + Math.exp(-x)), 5);
    });
  });
});
