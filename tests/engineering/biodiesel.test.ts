import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { biodieselShare, judgeBiodiesel } from '../../src/engineering/biodiesel.ts';
import { anyReading, between, expectSound, valueFrom } from './properties.ts';

const part = fc.record({
  litres: between(0.1, 1000),
  biodieselShare: between(0, 1),
});

describe('the share of biodiesel after mixing', () => {
  test('keeps every litre of biodiesel that went in', () => {
    fc.assert(
      fc.property(fc.array(part, { minLength: 1, maxLength: 5 }), parts => {
        const total = parts.reduce((sum, { litres }) => sum + litres, 0);
        const bio = parts.reduce((sum, p) => sum + p.litres * p.biodieselShare, 0);
        expect(Math.abs(valueFrom(biodieselShare(parts)) * total - bio)).toBeLessThan(1e-9 * total);
      }),
    );
  });

  test('meets its limit up to the limit itself', () => {
    const mix = (share: number) => [
      { litres: 50, biodieselShare: share },
      { litres: 50, biodieselShare: 0 },
    ];
    expect(valueFrom(judgeBiodiesel(mix(0.4), 0.2)).met).toBe(true);
    expect(valueFrom(judgeBiodiesel(mix(0.5), 0.2)).met).toBe(false);
  });

  test('is refused without fuel, without a limit, or with readings that are not finite', () => {
    expect(biodieselShare([])).toMatchObject({ issue: { code: 'missing', input: 'litres' } });
    expect(judgeBiodiesel([{ litres: 1, biodieselShare: 0 }], undefined)).toMatchObject({
      issue: { code: 'missing', input: 'limitShare' },
    });
    const anyPart = fc.record({ litres: anyReading, biodieselShare: anyReading });
    fc.assert(
      fc.property(fc.array(anyPart), anyReading, (parts, limit) => expectSound(judgeBiodiesel(parts, limit))),
    );
  });
});
