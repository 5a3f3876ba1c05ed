import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Profile } from '../../src/profile/schema.ts';
import { type FaultName, faultNames } from '../../src/rehearsal/faults.ts';
import { type Controls, handsOff } from '../../src/rehearsal/model/controls.ts';
import { electricAtRest, electricPlant, electricStep } from '../../src/rehearsal/model/electrics.ts';
import { createEngine, type Engine } from '../../src/rehearsal/model/engine.ts';
import { storedJ } from '../../src/rehearsal/model/heat.ts';
import { demoFour, demoSix } from '../machines/helpers/profiles.ts';

const controls: fc.Arbitrary<Controls> = fc.record({
  keyOn: fc.boolean(),
  starter: fc.boolean(),
  fuelling: fc.boolean(),
  demandRpm: fc.oneof(
    fc.constant(null),
    fc.double(),
    fc.constantFrom(Number.NaN, Number.POSITIVE_INFINITY, -1e9),
  ),
  pumpingByHand: fc.boolean(),
  bleeding: fc.boolean(),
  steering: fc.boolean(),
  oilFilled: fc.boolean(),
  coolantFilled: fc.boolean(),
});

const acts = fc.array(
  fc.record({
    controls,
    forS: fc.integer({ min: 1, max: 25 }),
    fault: fc.option(fc.constantFrom(...faultNames)),
  }),
  { minLength: 1, maxLength: 6 },
);

const engines = fc.record({
  profile: fc.constantFrom<Profile>(demoSix, demoFour),
  seed: fc.nat(),
  ambientC: fc.integer({ min: -40, max: 45 }),
});

interface Act {
  readonly controls: Controls;
  readonly forS: number;
  readonly fault: FaultName | null;
}

/** Lives through the acts, looking at the engine after each. */
function live(engine: Engine, all: readonly Act[], look: () => void): void {
  let atS = engine.state.timeS;
  for (const act of all) {
    engine.control(act.controls);
    if (act.fault) engine.inject(act.fault);
    atS += act.forS;
    engine.advanceTo(atS);
    look();
  }
}

/** Every number of the state, however deep. */
const numbersIn = (value: unknown): number[] => {
  if (typeof value === 'number') return [value];
  return typeof value === 'object' && value !== null ? Object.values(value).flatMap(numbersIn) : [];
};

const running: Controls = { ...handsOff, keyOn: true, oilFilled: true, coolantFilled: true };

/** An engine that was primed, cranked and fired, some seconds after that. */
function fired(profile: Profile, ambientC = 5): Engine {
  const engine = createEngine(profile, { seed: 7, ambientC });
  engine.control({ ...running, keyOn: false, pumpingByHand: true });
  engine.advanceTo(150);
  engine.control({ ...running, fuelling: false, starter: true });
  engine.advanceTo(180);
  engine.control({ ...running, starter: true });
  engine.advanceTo(185);
  engine.control(running);
  engine.advanceTo(195);
  return engine;
}

describe('the model of an engine', () => {
  it('stays finite and inside what is physically possible, whatever is done to it', () => {
    fc.assert(
      fc.property(engines, acts, ({ profile, ...options }, all) => {
        const engine = createEngine(profile, options);
        live(engine, all, () => {
          const { controls: _, ...state } = engine.state;
          expect(numbersIn(state).every(Number.isFinite)).toBe(true);
          const { speed, oil, electrics, heat, fuel, fluids } = engine.state;
          expect(speed.rpm).toBeGreaterThanOrEqual(0);
          expect(speed.rpm).toBeLessThanOrEqual(
            engine.plant.speed.highestRpm + engine.plant.speed.huntingRpm,
          );
          expect(oil.pressureKpa).toBeGreaterThanOrEqual(0);
          expect(oil.pressureKpa).toBeLessThanOrEqual(profile.oilPressure.reliefKpa);
          expect(electrics.charge).toBeGreaterThanOrEqual(0);
          expect(electrics.charge).toBeLessThanOrEqual(1);
          expect(Math.min(heat.coolantC, heat.metalC, heat.oilC)).toBeGreaterThan(options.ambientC - 0.001);
          expect(fuel.airL).toBeGreaterThanOrEqual(0);
          expect(fluids.coolantL).toBeGreaterThanOrEqual(0);
        });
      }),
      { numRuns: 15 },
    );
  });

  it('keeps the heat: what was given is stored, rejected, or ran out with coolant', () => {
    fc.assert(
      fc.property(engines, acts, ({ profile, ...options }, all) => {
        const engine = createEngine(profile, options);
        live(engine, all, () => {
          const { heat, fluids } = engine.state;
          const kept = storedJ(engine.plant.heat, heat, fluids.coolantL) + heat.rejectedJ + fluids.lostJ;
          expect(Math.abs(kept - heat.givenJ)).toBeLessThan(1e-6 * heat.givenJ + 1);
        });
      }),
      { numRuns: 15 },
    );
  });

  it('keeps the oil and the coolant: what was filled in is in the sump, the galleries, the system or lost', () => {
    fc.assert(
      fc.property(engines, acts, ({ profile, ...options }, all) => {
        const engine = createEngine(profile, options);
        let oilFilled = false;
        let coolantFilled = false;
        live(engine, all, () => {
          oilFilled ||= engine.state.controls.oilFilled;
          coolantFilled ||= engine.state.controls.coolantFilled;
          const { oil, fluids } = engine.state;
          expect(oil.sumpL + oil.galleryL).toBeCloseTo(oilFilled ? profile.oil.capacityL : 0, 6);
          expect(fluids.coolantL + fluids.lostL).toBeCloseTo(coolantFilled ? engine.plant.coolantL : 0, 6);
        });
      }),
      { numRuns: 15 },
    );
  });

  it('keeps the charge: what flowed into the battery is what its charge rose by', () => {
    const plant = electricPlant(demoSix, 5);
    let state = electricAtRest(plant);
    const firstCharge = state.charge;
    let flowedAs = 0;
    for (let step = 0; step < 4000; step += 1) {
      const starter = step < 200;
      const rpm = step < 400 ? 0 : 800;
      state = electricStep(
        plant,
        state,
        { keyOn: true, starter, heater: false, rpm, alternator: 'works' },
        0.05,
      );
      flowedAs += state.batteryA * 0.05;
      expect(state.charge).toBeLessThan(1);
    }
    expect((state.charge - firstCharge) * plant.capacityAs).toBeCloseTo(flowedAs, 6);
  });

  it('is the same for the same seed, and another for another', () => {
    const once = (seed: number) => {
      const engine = createEngine(demoSix, { seed, ambientC: 5 });
      engine.control({ ...running, fuelling: false, starter: true });
      engine.advanceTo(10);
      return engine.state;
    };
    expect(once(3)).toEqual(once(3));
    expect(once(3).oil).not.toEqual(once(4).oil);
  });

  it('comes to the same state in one advance as in many', () => {
    const [atOnce, bit] = [fired(demoSix), fired(demoSix)];
    atOnce.advanceTo(260);
    for (let atS = 195; atS <= 260; atS += 0.35) bit.advanceTo(atS);
    bit.advanceTo(260);
    expect(bit.state).toEqual(atOnce.state);
  });

  it('does not fire without fuelling, with air in the fuel, or with the key off', () => {
    const crank = (prime: boolean, extra: Partial<Controls>) => {
      const engine = createEngine(demoSix, { seed: 7, ambientC: 5 });
      engine.control({ ...running, keyOn: false, pumpingByHand: prime });
      engine.advanceTo(150);
      engine.control({ ...running, starter: true, ...extra });
      engine.advanceTo(160);
      return engine.state.speed.firing;
    };
    expect(crank(true, {})).toBe(true);
    expect(crank(true, { fuelling: false })).toBe(false);
    expect(crank(false, {})).toBe(false);
    expect(crank(true, { keyOn: false })).toBe(false);
  });
});
