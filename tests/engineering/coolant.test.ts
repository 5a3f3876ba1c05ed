import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { boilPoint, planMix } from '../../src/engineering/coolant.ts';
import { anyReading, between, expectSound, oneSpoilt, valueFrom } from './properties.ts';

const fraction = between(0, 1);

describe('draining and adding coolant', () => {
  test('fills the system exactly, with the wanted share, and never a negative litre', () => {
    fc.assert(
      fc.property(
        between(0.5, 500),
        fraction,
        fraction,
        fraction,
        between(0.3, 1),
        (systemLitres, filled, inSystemShare, wanted, concentrateShare) => {
          const inSystemLitres = systemLitres * filled;
          const wantedShare = wanted * concentrateShare;
          const plan = valueFrom(
            planMix({ systemLitres, inSystemLitres, inSystemShare, wantedShare, concentrateShare }),
          );
          const { drainLitres, concentrateLitres, waterLitres } = plan;
          for (const litres of Object.values(plan)) expect(litres).toBeGreaterThanOrEqual(0);
          expect(drainLitres).toBeLessThanOrEqual(inSystemLitres);
          const kept = inSystemLitres - drainLitres;
          const total = kept + concentrateLitres + waterLitres;
          expect(Math.abs(total - systemLitres)).toBeLessThan(1e-9 * systemLitres);
          const glycol = kept * inSystemShare + concentrateLitres * concentrateShare;
          expect(Math.abs(glycol - wantedShare * systemLitres)).toBeLessThan(1e-9 * systemLitres);
        },
      ),
    );
  });

  test('drains nothing while the room that is left is enough', () => {
    expect(
      valueFrom(planMix({ systemLitres: 40, inSystemLitres: 0, wantedShare: 0.5, concentrateShare: 1 })),
    ).toEqual({ drainLitres: 0, concentrateLitres: 20, waterLitres: 20 });
  });

  test('changes nothing that is right already, also where all shares are one', () => {
    const right = { systemLitres: 40, inSystemLitres: 20, inSystemShare: 0.5, concentrateShare: 1 };
    expect(valueFrom(planMix({ ...right, wantedShare: 0.25 }))).toEqual({
      drainLitres: 0,
      concentrateLitres: 0,
      waterLitres: 20,
    });
    expect(valueFrom(planMix({ ...right, wantedShare: 0.5, concentrateShare: 0.5 }))).toEqual({
      drainLitres: 0,
      concentrateLitres: 20,
      waterLitres: 0,
    });
    expect(valueFrom(planMix({ ...right, inSystemLitres: 40, wantedShare: 0.5 }))).toEqual({
      drainLitres: 0,
      concentrateLitres: 0,
      waterLitres: 0,
    });
  });

  test('is refused when the numbers cannot be true or cannot be met', () => {
    const system = {
      systemLitres: 40,
      inSystemLitres: 10,
      inSystemShare: 0.3,
      wantedShare: 0.5,
      concentrateShare: 0.95,
    };
    expect(planMix({ ...system, inSystemLitres: 41 })).toMatchObject({ issue: { code: 'contradictory' } });
    expect(planMix({ ...system, wantedShare: 0.96 })).toMatchObject({ issue: { code: 'noSolution' } });
    expect(planMix({ ...system, inSystemShare: undefined })).toMatchObject({
      issue: { code: 'missing', input: 'inSystemShare' },
    });
  });

  test('is never planned with numbers that are not finite', () => {
    const inputs = fc.record({
      systemLitres: anyReading,
      inSystemLitres: anyReading,
      inSystemShare: anyReading,
      wantedShare: anyReading,
      concentrateShare: anyReading,
    });
    const sound = {
      systemLitres: 40,
      inSystemLitres: 10,
      inSystemShare: 0.3,
      wantedShare: 0.5,
      concentrateShare: 0.95,
    };
    fc.assert(fc.property(fc.oneof(inputs, oneSpoilt(sound)), i => expectSound(planMix(i))));
  });
});

describe('the boiling point of coolant', () => {
  const glycol = fc.constantFrom('ethylene' as const, 'propylene' as const);
  const conditions = fc.record({
    glycolShare: between(0, 0.55),
    capPressureKpa: between(0, 200),
    altitudeM: between(0, 4500),
  });

  test('rises with cap pressure and with glycol, and falls with altitude', () => {
    fc.assert(
      fc.property(glycol, conditions, (kind, at) => {
        const boilC = valueFrom(boilPoint(kind, at));
        const higher = (change: Partial<typeof at>) =>
          valueFrom(boilPoint(kind, { ...at, ...change })) - boilC;
        expect(higher({ capPressureKpa: at.capPressureKpa + 10 })).toBeGreaterThan(0);
        expect(higher({ altitudeM: at.altitudeM + 100 })).toBeLessThan(0);
        expect(higher({ glycolShare: at.glycolShare + 0.02 })).toBeGreaterThan(0);
      }),
    );
  });

  test('is not given without the altitude, the cap or the mix', () => {
    const at = { glycolShare: 0.5, capPressureKpa: 100, altitudeM: 0 };
    for (const input of ['glycolShare', 'capPressureKpa', 'altitudeM']) {
      expect(boilPoint('ethylene', { ...at, [input]: undefined })).toMatchObject({
        issue: { code: 'missing', input },
      });
    }
  });

  test('is never a number that is not finite, whatever is entered', () => {
    const any = fc.record({ glycolShare: anyReading, capPressureKpa: anyReading, altitudeM: anyReading });
    fc.assert(
      fc.property(
        glycol,
        fc.oneof(any, oneSpoilt({ glycolShare: 0.5, capPressureKpa: 100, altitudeM: 500 })),
        (kind, at) => expectSound(boilPoint(kind, at)),
      ),
    );
  });
});
