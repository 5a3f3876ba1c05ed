import { atmosphericPressure } from '../src/engineering/atmosphere.ts';
import { chargingWindow, crankingFloor, stateOfCharge } from '../src/engineering/battery.ts';
import { judgeBiodiesel } from '../src/engineering/biodiesel.ts';
import { boilPoint, planMix } from '../src/engineering/coolant.ts';
import { blendForNight, fillTank } from '../src/engineering/fuel.ts';
import { freezePoint, shareForNight } from '../src/engineering/glycol.ts';
import { judgeHeaterLamp } from '../src/engineering/intake-heater.ts';
import { assessOils } from '../src/engineering/oil-grade.ts';
import { viscosityAt } from '../src/engineering/oil-viscosity.ts';
import { primingTime } from '../src/engineering/priming.ts';
import type { Result } from '../src/engineering/result.ts';
import { saturationPressure, saturationTemperature } from '../src/engineering/saturation.ts';
import { starterState, starterWait } from '../src/engineering/starter.ts';
import { toSi } from '../src/engineering/units.ts';
import { viscosityIndex } from '../src/engineering/viscosity-index.ts';

const FUELS = { no1CloudC: -40, no2CloudC: -9, nightLowC: -15, marginK: 3 };
const STARTER = { limitC: 150, longestBurstS: 30, ratedAmbientC: 25, timeConstantS: 300 };
const BURSTS = [
  { cranking: true, seconds: 15 },
  { cranking: false, seconds: 60 },
  { cranking: true, seconds: 15 },
];
const HEATER = [
  { temperatureC: -30, seconds: 30 },
  { temperatureC: 15, seconds: 0 },
];

const calculations: Readonly<Record<string, () => Result<unknown>>> = {
  'unit conversion': () => toSi(40, 'psi'),
  atmosphere: () => atmosphericPressure(1500),
  'saturation pressure': () => saturationPressure(110),
  'saturation temperature': () => saturationTemperature(200),
  'oil viscosity': () =>
    viscosityAt(
      [
        { temperatureC: 40, viscosityMm2S: 108 },
        { temperatureC: 100, viscosityMm2S: 14.5 },
      ],
      -10,
    ),
  'viscosity index': () => viscosityIndex({ viscosity40Mm2S: 108, viscosity100Mm2S: 14.5 }),
  'oil grades': () =>
    assessOils([{ grade: '15W-40' }, { grade: '5W-40' }], {
      forecastLowC: -22,
      runningC: 95,
      minRunningViscosityMm2S: 12,
    }),
  'fuel blend': () => blendForNight(FUELS),
  'fuel tank': () => fillTank({ ...FUELS, tankLitres: 200, inTankLitres: 40, inTankCloudC: -5 }),
  biodiesel: () =>
    judgeBiodiesel(
      [
        { litres: 40, biodieselShare: 0.2 },
        { litres: 160, biodieselShare: 0.05 },
      ],
      0.2,
    ),
  'glycol freezing point': () => freezePoint('ethylene', 0.5),
  'glycol share': () => shareForNight('ethylene', { nightLowC: -30, marginK: 5 }),
  'coolant mix': () =>
    planMix({
      systemLitres: 40,
      inSystemLitres: 38,
      inSystemShare: 0.3,
      wantedShare: 0.5,
      concentrateShare: 0.95,
    }),
  'coolant boiling point': () =>
    boilPoint('ethylene', { glycolShare: 0.5, capPressureKpa: 100, altitudeM: 1500 }),
  'state of charge': () => stateOfCharge(24, { restVoltageV: 25.2, batteryC: 5 }),
  'cranking floor': () => crankingFloor(24, -5),
  'charging window': () => chargingWindow(24, { setpointV: 14.1, toleranceV: 0.4, batteryC: 5 }),
  'starter budget': () => starterState(STARTER, 20, BURSTS),
  'starter wait': () => starterWait(STARTER, 20, BURSTS, 10),
  priming: () =>
    primingTime({
      pumpLitrePerTurn: 0.06,
      pumpTurnsPerCrankTurn: 1.5,
      crankingRpm: 150,
      fillLitres: 2.5,
      fillSpreadShare: 0.2,
      leastEfficiency: 0.6,
      greatestEfficiency: 0.9,
      viscosityFactor: 1.5,
      giveUpMultiple: 3,
    }),
  'intake heater lamp': () => judgeHeaterLamp(HEATER, { temperatureC: -5, lampOnS: 12, toleranceS: 3 }),
};

/** Times every calculation of the fills, the crank and the electrics; prints its name and microseconds a call. */
export function benchEngineering(calls = 20_000): void {
  for (const [name, calculate] of Object.entries(calculations)) {
    const result = calculate();
    if (!result.ok) throw new Error(`${name} was refused: ${JSON.stringify(result.issue)}`);
    for (let call = 0; call < calls / 10; call += 1) calculate();
    const start = performance.now();
    for (let call = 0; call < calls; call += 1) calculate();
    const microseconds = ((performance.now() - start) * 1000) / calls;
    console.log(`${name.padEnd(24)} ${microseconds.toFixed(2).padStart(8)} us`);
  }
}
