import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { saturationPressure, saturationTemperature } from '../../src/engineering/saturation.ts';
import { anyReading, between, expectSound, valueFrom } from './properties.ts';

const temperatureC = between(0, 373.946);

describe('boiling water', () => {
  test('boils hotter under more pressure', () => {
    fc.assert(
      fc.property(temperatureC, temperatureC, (a, b) => {
        const low = valueFrom(saturationPressure(Math.min(a, b)));
        expect(low).toBeLessThanOrEqual(valueFrom(saturationPressure(Math.max(a, b))));
      }),
    );
  });

  test('has one boiling point for each pressure: there and back gives the same temperature', () => {
    fc.assert(
      fc.property(between(0.01, 373.9), t => {
        const back = valueFrom(saturationTemperature(valueFrom(saturationPressure(t))));
        expect(Math.abs(back - t)).toBeLessThan(1e-6);
      }),
    );
  });

  test('is never described outside the formulation, nor by anything but finite numbers', () => {
    fc.assert(
      fc.property(anyReading, reading => {
        expectSound(saturationPressure(reading));
        expectSound(saturationTemperature(reading));
      }),
    );
    expect(saturationPressure(374)).toMatchObject({ ok: false, issue: { code: 'outOfRange' } });
    expect(saturationTemperature(0.6)).toMatchObject({ ok: false, issue: { code: 'outOfRange' } });
    expect(saturationTemperature(undefined)).toMatchObject({ ok: false, issue: { code: 'missing' } });
  });
});
