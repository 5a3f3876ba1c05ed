import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { viscosityIndex } from '../../src/engineering/viscosity-index.ts';
import { anyReading, between, expectSound, valueFrom } from './properties.ts';

describe('the viscosity index', () => {
  test('falls as the oil gets thicker at 40 degC for the same viscosity at 100 degC', () => {
    const oil = fc.record({
      v100: between(4, 40),
      a: between(5, 15),
      b: between(5, 15),
    });
    fc.assert(
      fc.property(oil, ({ v100, a, b }) => {
        const index = (ratio: number) =>
          viscosityIndex({ viscosity40Mm2S: v100 * ratio, viscosity100Mm2S: v100 });
        const [thin, thick] = [index(Math.min(a, b)), index(Math.max(a, b))];
        if (thin.ok && thick.ok) expect(thin.value).toBeGreaterThanOrEqual(thick.value);
      }),
    );
  });

  test('is continuous from one row of the table of equations to the next', () => {
    for (const seam of [3.8, 4.4, 5, 6.4, 7, 7.7, 9, 12, 15, 18, 22, 28, 40, 55, 70]) {
      const index = (v100: number) =>
        valueFrom(viscosityIndex({ viscosity40Mm2S: seam * 8, viscosity100Mm2S: v100 }));
      expect(Math.abs(index(seam) - index(seam - 1e-9))).toBeLessThan(1);
    }
  });

  test('is refused for an oil that is thinner when colder, or when a viscosity is missing', () => {
    expect(viscosityIndex({ viscosity40Mm2S: 8, viscosity100Mm2S: 9 })).toMatchObject({
      issue: { code: 'contradictory' },
    });
    expect(viscosityIndex({ viscosity40Mm2S: 80 })).toMatchObject({
      issue: { code: 'missing', input: 'viscosity100Mm2S' },
    });
  });

  test('is never a number that is not finite, whatever is entered', () => {
    fc.assert(
      fc.property(anyReading, anyReading, (viscosity40Mm2S, viscosity100Mm2S) =>
        expectSound(viscosityIndex({ viscosity40Mm2S, viscosity100Mm2S })),
      ),
    );
  });
});
