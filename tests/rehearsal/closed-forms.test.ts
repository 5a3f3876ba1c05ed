import { describe, expect, it } from 'vitest';
import { primingTime } from '../../src/engineering/priming.ts';
import { readWarmUp } from '../../src/engineering/warm-up.ts';
import { handsOff } from '../../src/rehearsal/model/controls.ts';
import { createEngine } from '../../src/rehearsal/model/engine.ts';
import {
  type HeatInputs,
  type HeatPlant,
  heatAtRest,
  heatPlant,
  heatStep,
} from '../../src/rehearsal/model/heat.ts';
import { demoFour, demoSix } from '../machines/helpers/profiles.ts';

const STEP_S = 0.05;

function stepped(plant: HeatPlant, from: ReturnType<typeof heatAtRest>, inputs: HeatInputs, seconds: number) {
  let state = from;
  for (let step = 0; step < seconds / STEP_S; step += 1) state = heatStep(plant, state, inputs, STEP_S);
  return state;
}

const idle = (plant: HeatPlant): HeatInputs => ({
  rpm: plant.idleRpm,
  firing: true,
  coolantL: 20,
  thermostat: 'stuckShut',
});

describe('the heat of the model against closed forms (lumped capacitance: Incropera, chapter 5)', () => {
  it('warms one lump as 1 - exp(-t/tau) towards heat over conductance', () => {
    const plant = { ...heatPlant(demoSix, 10), metalToCoolantRunningWPerK: 0, metalToOilWPerK: 0 };
    const tauS = plant.metalJPerK / plant.metalToAirWPerK;
    const endK = plant.idleHeatW / plant.metalToAirWPerK;
    for (const seconds of [60, 600, 3000]) {
      const { metalC } = stepped(plant, heatAtRest(plant), idle(plant), seconds);
      expect(metalC).toBeCloseTo(10 + endK * (1 - Math.exp(-seconds / tauS)), 1);
    }
  });

  it('cools one lump as exp(-t/tau)', () => {
    const plant = { ...heatPlant(demoSix, 10), metalToCoolantStandingWPerK: 0, metalToOilWPerK: 0 };
    const tauS = plant.metalJPerK / plant.metalToAirWPerK;
    const hot = { ...heatAtRest(plant), metalC: 90 };
    const { metalC } = stepped(plant, hot, { ...idle(plant), firing: false, rpm: 0 }, 3000);
    expect(metalC).toBeCloseTo(10 + 80 * Math.exp(-3000 / tauS), 2);
  });

  it('soaks heat from metal into coolant with the time constant of two lumps that lose none', () => {
    const plant = { ...heatPlant(demoSix, 10), metalToAirWPerK: 0, metalToOilWPerK: 0 };
    const coolantJPerK = 20 * plant.coolantJPerKPerL;
    const rate = plant.metalToCoolantStandingWPerK * (1 / plant.metalJPerK + 1 / coolantJPerK);
    const hot = { ...heatAtRest(plant), metalC: 95, coolantC: 85 };
    const { metalC, coolantC } = stepped(plant, hot, { ...idle(plant), firing: false, rpm: 0 }, 200);
    const meanC = (95 * plant.metalJPerK + 85 * coolantJPerK) / (plant.metalJPerK + coolantJPerK);
    expect(metalC - coolantC).toBeCloseTo(10 * Math.exp(-rate * 200), 2);
    expect(
      (metalC * plant.metalJPerK + coolantC * coolantJPerK) / (plant.metalJPerK + coolantJPerK),
    ).toBeCloseTo(meanC, 6);
  });

  it.each([demoSix, demoFour])(
    'warms $name so that the fit of the tool finds the time to the thermostat',
    profile => {
      const plant = heatPlant(profile, 5);
      const inputs = {
        ...idle(plant),
        coolantL: profile.coolant.systemVolumeL,
        thermostat: 'works' as const,
      };
      let state = heatAtRest(plant);
      const readings: { timeS: number; value: number }[] = [];
      let opensS = 0;
      for (let atS = 0; opensS === 0; atS += 20) {
        readings.push({ timeS: atS, value: Math.round(state.coolantC) });
        state = stepped(plant, state, inputs, 20);
        if (state.coolantC >= profile.thermostat.opensC) opensS = atS + 20;
      }
      expect(opensS).toBeGreaterThan(profile.warmUp.minS);
      expect(opensS).toBeLessThan(profile.warmUp.maxS);
      const half = readings.filter(({ timeS }) => timeS < 0.7 * opensS);
      const found = readWarmUp(half, profile.thermostat);
      if (!found.ok || found.value.state !== 'warming') throw new Error(JSON.stringify(found));
      const { bestS } = found.value.thermostat;
      expect(Math.abs(bestS - opensS)).toBeLessThan(0.1 * opensS);
    },
  );
});

describe('the oil of the model against the closed form of the pump', () => {
  it.each([demoSix, demoFour])(
    'fills the galleries of $name between the earliest and the latest time',
    profile => {
      const expected = primingTime({
        ...profile.priming,
        crankingRpm: profile.starter.crankingRpm,
        viscosityFactor: 1,
      });
      if (!expected.ok) throw new Error('no priming time');
      for (const seed of [1, 2, 3, 4, 5]) {
        const engine = createEngine(profile, { seed, ambientC: 20 });
        engine.control({ ...handsOff, keyOn: true, fuelling: false, starter: true, oilFilled: true });
        let atS = 0;
        for (; engine.state.oil.pressureKpa < profile.oilPressure.showsKpa && atS < 120; atS += 0.1)
          engine.advanceTo(atS);
        // It takes a moment to come up to cranking speed, and the voltage is not quite the nominal one.
        expect(atS).toBeGreaterThan(expected.value.earliestS * 0.9);
        expect(atS).toBeLessThan(expected.value.latestS * 1.1 + 1);
      }
    },
  );
});
