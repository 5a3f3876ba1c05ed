import { describe, expect, it } from 'vitest';
import { crankedNearItsLimit, crankingVoltage } from '../../../machines/limits/electrics.ts';
import { demoSix } from '../helpers/profiles.ts';
import { knowing } from './known.ts';

describe('cranking near the limit of its voltage', () => {
  const at = (crankingVoltageV: number) =>
    knowing(demoSix, { ambientTemperature: 20, crankingVoltage: crankingVoltageV });

  it('is so where it was not measured at all', () => {
    expect(crankedNearItsLimit(knowing(demoSix, { ambientTemperature: 20 }))).toBe(true);
  });

  it('is so at the limit and beyond, and not well above it', () => {
    const judged = crankingVoltage(at(11), 11);
    const min = judged.ok ? (judged.value.min ?? 0) : 0;
    expect(min).toBeGreaterThan(9);
    expect(crankedNearItsLimit(at(min))).toBe(true);
    expect(crankedNearItsLimit(at(min - 1))).toBe(true);
    expect(crankedNearItsLimit(at(min + 2))).toBe(false);
  });

  it('is so where its limit has no answer', () => {
    expect(crankedNearItsLimit(knowing(demoSix, { ambientTemperature: 500, crankingVoltage: 11 }))).toBe(
      true,
    );
  });
});
