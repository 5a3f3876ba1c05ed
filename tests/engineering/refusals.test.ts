import { expect, test } from 'vitest';
import { chargingWindow } from '../../src/engineering/battery.ts';
import { biodieselShare } from '../../src/engineering/biodiesel.ts';
import { estimateCoolDown } from '../../src/engineering/cool-down.ts';
import { planMix } from '../../src/engineering/coolant.ts';
import { faultCode, readFaultCode } from '../../src/engineering/fault-codes.ts';
import { judgeFault } from '../../src/engineering/fault-rules.ts';
import { blendCloudPoint, fillTank, gellingRisk } from '../../src/engineering/fuel.ts';
import { shareForNight } from '../../src/engineering/glycol.ts';
import { judgeIdle } from '../../src/engineering/idle.ts';
import { heaterWait } from '../../src/engineering/intake-heater.ts';
import { assessOils, suitableGrades } from '../../src/engineering/oil-grade.ts';
import { judgeFirstPressure, oilPressureFloor } from '../../src/engineering/oil-pressure.ts';
import { judgeSweep } from '../../src/engineering/oil-pressure-sweep.ts';
import { viscosityAt } from '../../src/engineering/oil-viscosity.ts';
import { scoreOutliers } from '../../src/engineering/outliers.ts';
import { primingTime } from '../../src/engineering/priming.ts';
import { describeIssue, type Result } from '../../src/engineering/result.ts';
import { starterState, starterWait } from '../../src/engineering/starter.ts';
import { viscosityIndex } from '../../src/engineering/viscosity-index.ts';
import { readWarmUp } from '../../src/engineering/warm-up.ts';

const PROFILE = { setpointV: 13.4, toleranceV: 0.4 };
const SYSTEM = {
  systemLitres: 40,
  inSystemLitres: 10,
  inSystemShare: 0.3,
  wantedShare: 0.5,
  concentrateShare: 0.95,
};
const TANK = {
  tankLitres: 100,
  inTankLitres: 20,
  inTankCloudC: -5,
  no1CloudC: -40,
  no2CloudC: -9,
  nightLowC: -15,
  marginK: 3,
};
const STARTER = { limitC: 150, longestBurstS: 30, ratedAmbientC: 25, timeConstantS: 300 };
const PUMP = {
  pumpLitrePerTurn: 0.05,
  pumpTurnsPerCrankTurn: 1,
  crankingRpm: 150,
  fillLitres: 5,
  fillSpreadShare: 0.2,
  leastEfficiency: 0.9,
  greatestEfficiency: 0.8,
  viscosityFactor: 1,
  giveUpMultiple: 2,
};
const IDLE = { minRpm: 700, maxRpm: 900, maxScatterRpm: 20, maxDriftRpm: 30, windowS: 20 };
const NEED = { forecastLowC: -10, runningC: 95, minRunningViscosityMm2S: 10 };
const THERMOSTAT = { opensC: 82, fullyOpenC: 95, toleranceK: 4 };
const row = (oilC: number, ...floorKpa: (readonly [number, number])[]) => ({ oilC, floorKpa });
const FLOOR = [row(20, [700, 200], [2500, 400]), row(100, [700, 80], [2500, 280])];
const HEATER = [
  { temperatureC: -30, seconds: 30 },
  { temperatureC: 30, seconds: 5 },
];
const readings = (...values: number[]) => values.map((value, i) => ({ timeS: 10 * i, value }));
const sweep = (...points: (readonly [number, number])[]) =>
  points.map(([speedRpm, pressureKpa]) => ({ speedRpm, pressureKpa }));
const judged = (seconds: number, supervisor: string, reason: string) =>
  judgeFault(
    { spn: 157, fmi: { number: 18, text: '' } },
    5,
    seconds === 0 ? [] : [{ spn: 157, action: { kind: 'watchUntil', seconds } }],
    [{ spn: 157, fmi: 18, supervisor, reason }],
  );
const oil = (cold: readonly [number, number], hot: readonly [number, number]) =>
  viscosityAt(
    [
      { temperatureC: cold[0], viscosityMm2S: cold[1] },
      { temperatureC: hot[0], viscosityMm2S: hot[1] },
    ],
    50,
  );

/** The refusal, and the sentence that a person gets. */
const REFUSALS: readonly (readonly [() => Result<unknown>, string])[] = [
  [
    () => chargingWindow(12, { ...PROFILE, batteryC: 25 }),
    'toleranceV (0.4) contradicts another input; allowed: a window above 13 V at 25 degC.',
  ],
  [() => biodieselShare([]), 'litres is missing; allowed: some fuel.'],
  [
    () => planMix({ ...SYSTEM, inSystemLitres: 41 }),
    'inSystemLitres (41) contradicts another input; allowed: 40 litre at most.',
  ],
  [
    () => planMix({ ...SYSTEM, wantedShare: 0.96 }),
    'wantedShare (0.96) leaves no answer; allowed: 0.95 at most with this concentrate.',
  ],
  [
    () => shareForNight('ethylene', { nightLowC: -55, marginK: 0 }),
    'nightLowC (-55) leaves no answer; allowed: freezing points down to -48.3 degC, margin included.',
  ],
  [
    () => estimateCoolDown(readings(80), 39, 40),
    'recheckC (40) contradicts another input; allowed: at least 2 K above ambientC, 39 degC.',
  ],
  [
    () => estimateCoolDown(readings(80), 20, 40),
    'coolantC (1 readings) is too little to calculate from; allowed: at least 2.',
  ],
  [() => faultCode(100, 3.5), 'fmi (3.5) is not a usable number; allowed: a whole number.'],
  [() => faultCode(100.5, 3), 'spn (100.5) is not a usable number; allowed: a whole number.'],
  [
    () => readFaultCode(' '),
    'fault is missing; allowed: an SPN and an FMI with something between them, such as 157/18.',
  ],
  [
    () => readFaultCode(' 15718 '),
    'fmi (15718) is missing; allowed: an SPN and an FMI with something between them, such as 157/18.',
  ],
  [
    () => readFaultCode(' low oil '),
    'fault (low oil) is not a usable number; allowed: an SPN and an FMI with something between them, such as 157/18.',
  ],
  [() => judged(0, ' ', 'a reason'), 'supervisor is missing; allowed: who accepts the fault.'],
  [() => judged(0, 'R. Ortiz', ' '), 'reason is missing; allowed: why the fault is accepted.'],
  [() => judged(0.9, '', ''), 'watchUntilS (0.9) is outside the range of the rule; allowed: 1 to 3600 s.'],
  [() => judged(3601, '', ''), 'watchUntilS (3601) is outside the range of the rule; allowed: 1 to 3600 s.'],
  [() => blendCloudPoint([]), 'litres is missing; allowed: some fuel.'],
  [
    () => fillTank({ ...TANK, nightLowC: -45 }),
    'nightLowC (-45) leaves no answer; allowed: a warmer night, a colder No. 1, or less of the old fuel in the tank.',
  ],
  [
    () => fillTank({ ...TANK, inTankLitres: 101 }),
    'inTankLitres (101) contradicts another input; allowed: 100 litre at most.',
  ],
  [
    () => fillTank({ ...TANK, no1CloudC: -9 }),
    'no1CloudC (-9) contradicts another input; allowed: below -9 degC.',
  ],
  [
    () => gellingRisk({ nightLowC: 0, cloudC: -9, pourC: -8, marginK: 3 }),
    'pourC (-8) contradicts another input; allowed: -9 degC at most.',
  ],
  [
    () => gellingRisk({ nightLowC: 0, cloudC: -9, pourC: 31, marginK: 3 }),
    'pourC (31) is outside the range of the rule; allowed: -70 to 30 degC.',
  ],
  [
    () => judgeIdle([], { ...IDLE, maxRpm: 700 }),
    'maxRpm (700) contradicts another input; allowed: above minRpm, 700 rpm.',
  ],
  [
    () => judgeIdle(readings(800, 800, 800), IDLE),
    'speedRpm (3 readings over 20.0 s, longest gap 10.0 s) is too little to calculate from; allowed: at least 5 readings that cover the window with no gap over half of it of 20 s.',
  ],
  [
    () => judgeIdle([], IDLE),
    'speedRpm (0 readings over 0.0 s, longest gap 0.0 s) is too little to calculate from; allowed: at least 5 readings that cover the window with no gap over half of it of 20 s.',
  ],
  [
    () => judgeIdle(readings(800, 8001), IDLE),
    'speedRpm 2 (8001) is outside the range of the rule; allowed: 0 to 8000 rpm.',
  ],
  [
    () => heaterWait(HEATER, -31),
    'temperatureC (-31) is outside the range of the rule; allowed: -30 to 30 degC, as far as the table goes.',
  ],
  [
    () => heaterWait(HEATER, 31),
    'temperatureC (31) is outside the range of the rule; allowed: -30 to 30 degC, as far as the table goes.',
  ],
  [
    () => heaterWait(HEATER.slice(1), 0),
    'table (1) is too little to calculate from; allowed: 2 rows or more.',
  ],
  [
    () => heaterWait([{ temperatureC: 30, seconds: 30 }, ...HEATER.slice(1)], 30),
    'table[1].temperatureC (30) contradicts another input; allowed: above 30 degC.',
  ],
  [
    () => heaterWait([{ temperatureC: -30, seconds: 4 }, ...HEATER.slice(1)], 0),
    'table[1].seconds (5) contradicts another input; allowed: 4 s at most.',
  ],
  [
    () => assessOils([{ grade: '17W-40' }], NEED),
    'oils[0].grade (17W-40) is outside the range of the rule; allowed: SAE J300 grades such as 15W-40.',
  ],
  [() => assessOils([], NEED), 'oils is missing; allowed: at least one oil.'],
  [() => suitableGrades([{ grade: '40' }], NEED), 'oils leaves no answer; allowed: another grade.'],
  [
    () => assessOils([{ grade: '15W-40', viscosity40Mm2S: 110, viscosity100Mm2S: 16.3 }], NEED),
    'oils[0].viscosity100Mm2S (16.3) contradicts another input; allowed: the range of 15W-40: 12.5 mm2/s up to below 16.3.',
  ],
  [
    () => oilPressureFloor(600, 80, FLOOR),
    'speedRpm (600) is outside the range of the rule; allowed: the speeds of every row of the table.',
  ],
  [
    () => oilPressureFloor(700, 101, FLOOR),
    'oilC (101) is outside the range of the rule; allowed: up to 100 degC, the hottest row.',
  ],
  [() => oilPressureFloor(700, 80, []), 'floorKpa is missing; allowed: at least one row.'],
  [
    () => oilPressureFloor(700, 80, [row(100, [700, 80]), row(100, [700, 80])]),
    'floorKpa at 100 degC contradicts another input; allowed: rows by rising oilC.',
  ],
  [
    () => oilPressureFloor(700, 80, [row(100)]),
    'floorKpa at 100 degC is missing; allowed: at least one point.',
  ],
  [
    () => oilPressureFloor(700, 80, [row(100, [700, 200], [900, 199])]),
    'floorKpa at 100 degC (199 kPa at 900 rpm) contradicts another input; allowed: speeds that rise, with floors that never fall.',
  ],
  [
    () => oilPressureFloor(700, 80, [row(100, [700, 200], [700, 300])]),
    'floorKpa at 100 degC (300 kPa at 700 rpm) contradicts another input; allowed: speeds that rise, with floors that never fall.',
  ],
  [
    () => oilPressureFloor(700, 80, [row(100, [8001, 200])]),
    'floorKpa at 100 degC, speed (8001) is outside the range of the rule; allowed: 0 to 8000 rpm.',
  ],
  [
    () => oilPressureFloor(700, 80, [row(181, [700, 200])]),
    'oilC (181) is outside the range of the rule; allowed: -60 to 180 degC.',
  ],
  [
    () => judgeFirstPressure(readings(0, 50), 5, { leastKpa: 100, withinS: 10 }),
    'oilPressureKpa (a reading at 10 s) contradicts another input; allowed: up to 5 s.',
  ],
  [
    () => judgeFirstPressure(readings(0, 2001), 20, { leastKpa: 100, withinS: 10 }),
    'oilPressureKpa 2 (2001) is outside the range of the rule; allowed: 0 to 2000 kPa.',
  ],
  [
    () => judgeSweep(sweep([800, 200], [1000, 220], [1200, 240], [1400, 260]), 600),
    'points (4 points from 800 to 1400 rpm) is too little to calculate from; allowed: at least 5 points below the relief pressure over a speed range of a third of the lowest speed.',
  ],
  [
    () => judgeSweep([], 600),
    'points (0 points from 0 to 0 rpm) is too little to calculate from; allowed: at least 5 points below the relief pressure over a speed range of a third of the lowest speed.',
  ],
  [
    () => judgeSweep(sweep([0.9, 200]), 600),
    'point 1 speedRpm (0.9) is outside the range of the rule; allowed: 1 to 8000 rpm.',
  ],
  [
    () => judgeSweep(sweep([800, 200], [900, 2001]), 600),
    'point 2 pressureKpa (2001) is outside the range of the rule; allowed: 0 to 2000 kPa.',
  ],
  [() => judgeSweep([], 49), 'reliefKpa (49) is outside the range of the rule; allowed: 50 to 2000 kPa.'],
  [() => judgeSweep([], 2001), 'reliefKpa (2001) is outside the range of the rule; allowed: 50 to 2000 kPa.'],
  [
    () => oil([40, 110], [59, 14]),
    'secondTemperatureC (59) is too little to calculate from; allowed: 20 K or more from 40 degC.',
  ],
  [
    () => oil([40, 110], [100, 110]),
    'secondViscosityMm2S (110) contradicts another input; allowed: an oil is thicker when colder.',
  ],
  [() => scoreOutliers([1, 2, 3, 4, Number.NaN]), 'values is not a usable number.'],
  [
    () => scoreOutliers([1, 2, 3, 4]),
    'values (4) is too little to calculate from; allowed: 5 values or more.',
  ],
  [() => primingTime(PUMP), 'leastEfficiency (0.9) contradicts another input; allowed: 0.8 at most.'],
  [
    () => starterState({ ...STARTER, limitC: 60, ratedAmbientC: 60 }, 20, []),
    'limitC (60) contradicts another input; allowed: above 60 degC.',
  ],
  [() => starterWait(STARTER, 45, [], 30), 'wantedS (30) leaves no answer; allowed: a shorter burst.'],
  [
    () => viscosityIndex({ viscosity40Mm2S: 14, viscosity100Mm2S: 14 }),
    'viscosity40Mm2S (14) contradicts another input; allowed: an oil is thicker when colder.',
  ],
  [() => readWarmUp([], THERMOSTAT), 'coolantC is missing; allowed: at least 6 readings.'],
  [
    () => readWarmUp([], { ...THERMOSTAT, fullyOpenC: 82 }),
    'fullyOpenC (82) contradicts another input; allowed: above opensC, 82 degC.',
  ],
  [
    () => readWarmUp(readings(20, 25, 30, 34, 38), THERMOSTAT),
    'coolantC (5 readings over 40 s) is too little to calculate from; allowed: steady speed and load; at least 6 readings over 60 s with a rise of 5 K and of 6 times their scatter.',
  ],
  [
    () =>
      readWarmUp(
        [
          { timeS: 10, value: 20 },
          { timeS: 5, value: 21 },
        ],
        THERMOSTAT,
      ),
    'coolantC 2 timeS (5) contradicts another input; allowed: no earlier than the reading before it, at 10 s.',
  ],
];

test.each(REFUSALS.map(([refused, sentence]) => [sentence, refused] as const))('%s', (sentence, refused) => {
  const result = refused();
  expect(result.ok ? 'an answer' : describeIssue(result.issue)).toBe(sentence);
});
