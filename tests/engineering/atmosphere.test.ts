import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { atmosphericPressure } from '../../src/engineering/atmosphere.ts';
import { anyReading, between, expectSound, valueFrom } from './properties.ts';

const altitudeM = between(-2000, 11_000);

describe('the pressure of the atmosphere', () => {
  test('falls with altitude', () => {
    fc.assert(
      fc.property(altitudeM, altitudeM, (a, b) => {
        const low = valueFrom(atmosphericPressure(Math.min(a, b)));
        const high = valueFrom(atmosphericPressure(Math.max(a, b)));
        expect(low).toBeGreaterThanOrEqual(high);
      }),
    );
  });

  test('is never given for an altitude outside the layer, nor as anything but a finite number', () => {
    fc.assert(fc.property(fc.oneof(anyReading, altitudeM), m => expectSound(atmosphericPressure(m))));
    expect(atmosphericPressure(11_001)).toMatchObject({ ok: false, issue: { code: 'outOfRange' } });
    expect(atmosphericPressure(undefined)).toMatchObject({ ok: false, issue: { code: 'missing' } });
  });
});
