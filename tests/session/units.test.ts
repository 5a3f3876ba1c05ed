import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { quantityUnits, type SiUnit } from '../../src/engineering/quantities/table.ts';
import { asShownUnit, fromUser, toUser, unitSystems, userUnit } from '../../src/session/units.ts';

const kept: readonly SiUnit[] = ['%', 'count', 'V', 'rpm', 's'];

describe('units', () => {
  it('are metric or those of the United States', () => {
    expect(unitSystems).toEqual(['metric', 'us']);
  });

  it.each([
    ['metric', 'degC', 'degC', 20, 20],
    ['metric', 'm', 'm', 300, 300],
    ['metric', 'litre', 'litre', 15, 15],
    ['metric', 'kPa', 'bar', 350, 3.5],
    ['us', 'degC', 'degF', 100, 212],
    ['us', 'm', 'ft', 304.8, 1000],
    // 57.75 cubic inches of 16.387064 mL.
    ['us', 'litre', 'usQuart', 0.946352946, 1],
    // 231 cubic inches of 16.387064 mL.
    ['us', 'litreOfFuel', 'usGallon', 3.785411784, 1],
    ['metric', 'litreOfFuel', 'litre', 15, 15],
    ['us', 'kPa', 'psi', 6.894757293, 1],
  ] as const)('%s: %s is %s', (system, si, id, value, user) => {
    const unit = userUnit(system, si);
    expect(unit.id).toBe(id);
    expect(toUser(unit, value)).toBeCloseTo(user, 6);
  });

  it.each(kept)('%s is the same everywhere', si => {
    for (const system of unitSystems) {
      expect(userUnit(system, si)).toMatchObject({ id: si, scale: 1, offset: 0 });
    }
  });

  it('come back to what was measured', () => {
    fc.assert(
      fc.property(
        fc.constantFrom(...unitSystems),
        fc.constantFrom(...Object.values(quantityUnits)),
        fc.double({ min: -1000, max: 10_000, noNaN: true }),
        (system, si, value) => {
          const unit = userUnit(system, si);
          expect(fromUser(unit, toUser(unit, value))).toBeCloseTo(value, 6);
        },
      ),
    );
  });

  it('of a verdict are known by their names, and what has none is a pure number', () => {
    for (const si of Object.values(quantityUnits)) expect(asShownUnit(si)).toBe(si);
    expect(asShownUnit('')).toBeNull();
    expect(asShownUnit('1/min')).toBeNull();
  });
});
