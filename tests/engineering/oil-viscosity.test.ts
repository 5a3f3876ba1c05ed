import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { fillTimeFactor, viscosityAt } from '../../src/engineering/oil-viscosity.ts';
import { anyReading, between, expectSound, valueFrom } from './properties.ts';

const oil = fc
  .record({
    v100: between(4, 30),
    ratio: between(4, 12),
  })
  .map(
    ({ v100, ratio }) =>
      [
        { temperatureC: 40, viscosityMm2S: v100 * ratio },
        { temperatureC: 100, viscosityMm2S: v100 },
      ] as const,
  );
const temperatureC = between(-10, 120);

describe('the viscosity of an oil at another temperature', () => {
  test('is that of the data sheet at the two temperatures of the data sheet', () => {
    fc.assert(
      fc.property(oil, points => {
        for (const point of points) {
          const got = valueFrom(viscosityAt(points, point.temperatureC));
          expect(Math.abs(got / point.viscosityMm2S - 1)).toBeLessThan(1e-9);
        }
      }),
    );
  });

  test('falls as the oil warms', () => {
    fc.assert(
      fc.property(oil, temperatureC, temperatureC, (points, a, b) => {
        const cold = viscosityAt(points, Math.min(a, b));
        const warm = viscosityAt(points, Math.max(a, b));
        if (cold.ok && warm.ok) expect(cold.value).toBeGreaterThanOrEqual(warm.value);
      }),
    );
  });

  test('does not depend on which point is named first', () => {
    fc.assert(
      fc.property(oil, temperatureC, ([p, q], t) => {
        expect(viscosityAt([q, p], t)).toEqual(viscosityAt([p, q], t));
      }),
    );
  });

  test('is refused when the colder point is the thinner, or the points are too close', () => {
    const cold = { temperatureC: 40, viscosityMm2S: 10 };
    expect(viscosityAt([cold, { temperatureC: 100, viscosityMm2S: 100 }], 20)).toMatchObject({
      issue: { code: 'contradictory', input: 'secondViscosityMm2S' },
    });
    expect(viscosityAt([cold, { temperatureC: 100, viscosityMm2S: 10 }], 20)).toMatchObject({
      issue: { code: 'contradictory' },
    });
    expect(viscosityAt([cold, { temperatureC: 59, viscosityMm2S: 9 }], 20)).toMatchObject({
      issue: { code: 'tooLittleData', input: 'secondTemperatureC' },
    });
    expect(viscosityAt([cold, { temperatureC: 100 }], 20)).toMatchObject({
      issue: { code: 'missing', input: 'secondViscosityMm2S' },
    });
  });

  test('is never a number that is not finite, whatever is entered', () => {
    const point = fc.record({ temperatureC: anyReading, viscosityMm2S: anyReading });
    fc.assert(fc.property(point, point, anyReading, (p, q, t) => expectSound(viscosityAt([p, q], t))));
  });
});

describe('the factor that thick oil puts on filling', () => {
  const viscosity = between(2, 2e7);

  test('is 1 up to the viscosity at which the pump still fills, and never falls with viscosity', () => {
    fc.assert(
      fc.property(viscosity, viscosity, viscosity, (limit, a, b) => {
        const factor = (v: number) =>
          valueFrom(fillTimeFactor({ viscosityMm2S: v, fullFlowViscosityMm2S: limit }));
        expect(factor(limit)).toBe(1);
        expect(factor(Math.min(a, b))).toBeLessThanOrEqual(factor(Math.max(a, b)));
      }),
    );
  });

  test('is never hollow', () => {
    fc.assert(
      fc.property(anyReading, anyReading, (viscosityMm2S, fullFlowViscosityMm2S) =>
        expectSound(fillTimeFactor({ viscosityMm2S, fullFlowViscosityMm2S })),
      ),
    );
  });
});
