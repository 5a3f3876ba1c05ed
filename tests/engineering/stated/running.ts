import { judgeAgreement } from '../../../src/engineering/agreement.ts';
import { atmosphericPressure } from '../../../src/engineering/atmosphere.ts';
import { estimateCoolDown } from '../../../src/engineering/cool-down.ts';
import { faultCode } from '../../../src/engineering/fault-codes.ts';
import { judgeFault } from '../../../src/engineering/fault-rules.ts';
import { judgeCapOpening, judgeHeatSoak } from '../../../src/engineering/heat-soak.ts';
import { judgeIdle } from '../../../src/engineering/idle.ts';
import { judgeFirstPressure, judgeOilPressure } from '../../../src/engineering/oil-pressure.ts';
import { judgeSweep } from '../../../src/engineering/oil-pressure-sweep.ts';
import { primingTime } from '../../../src/engineering/priming.ts';
import { saturationPressure, saturationTemperature } from '../../../src/engineering/saturation.ts';
import { judgeWarmUpHold, readWarmUp } from '../../../src/engineering/warm-up.ts';
import type { Statement } from './statement.ts';

const IDLE = Array.from({ length: 11 }, (_, i) => ({ timeS: 2 * i, value: 800 }));
const SWEEP = Array.from({ length: 6 }, (_, i) => ({ speedRpm: 800 + 200 * i, pressureKpa: 200 + 20 * i }));
const FLOOR = [
  {
    oilC: 20,
    floorKpa: [
      [0, 0],
      [8000, 400],
    ],
  },
  {
    oilC: 100,
    floorKpa: [
      [0, 0],
      [8000, 300],
    ],
  },
] as const;
const STEAM = {
  ruleId: 'iapws-if97-region-4',
  source: [/IAPWS R7-97\(2012\)/],
  validity: [/pure water/],
};

/** From priming to the heat soak. */
export const running: readonly Statement[] = [
  {
    name: 'priming',
    sound: {
      pumpLitrePerTurn: 0.05,
      pumpTurnsPerCrankTurn: 1,
      crankingRpm: 150,
      fillLitres: 5,
      fillSpreadShare: 0.2,
      leastEfficiency: 0.5,
      greatestEfficiency: 0.9,
      viscosityFactor: 1,
      giveUpMultiple: 2,
    },
    compute: primingTime,
    ranges: {
      pumpLitrePerTurn: [0.001, 1, 'litre'],
      pumpTurnsPerCrankTurn: [0.2, 5, ''],
      crankingRpm: [30, 500, '1/min'],
      fillLitres: [0.01, 100, 'litre'],
      fillSpreadShare: [0, 0.9, ''],
      leastEfficiency: [0.1, 1, ''],
      greatestEfficiency: [0.1, 1, ''],
      viscosityFactor: [1, 1000, ''],
      giveUpMultiple: [1, 10, ''],
    },
    ruleId: 'priming-time',
    source: [/ISO 4391:1983/],
    validity: [/30 to 500 1\/min/],
  },
  {
    name: 'floor of the oil pressure',
    sound: { pressureKpa: 200, speedRpm: 800, oilC: 60 },
    compute: given => judgeOilPressure(given.pressureKpa, given, FLOOR),
    ranges: { pressureKpa: [0, 2000, 'kPa'], speedRpm: [0, 8000, 'rpm'], oilC: [-60, 180, 'degC'] },
    ruleId: 'oil-pressure-floor',
    source: [/table of the engine profile/],
    validity: [/no hotter than its hottest row/],
    verdictUnits: ['kPa'],
  },
  {
    name: 'first oil pressure',
    sound: { nowS: 5, leastKpa: 100, withinS: 10 },
    compute: given => judgeFirstPressure([], given.nowS, given),
    ranges: { nowS: [0, 3600, 's'], leastKpa: [1, 2000, 'kPa'], withinS: [1, 60, 's'] },
    ruleId: 'first-oil-pressure',
    source: [/seconds allowed by the engine profile/],
    validity: [/timed from first fire/],
    verdictUnits: ['s'],
  },
  {
    name: 'idle',
    sound: { minRpm: 700, maxRpm: 900, maxScatterRpm: 20, maxDriftRpm: 30, windowS: 20, 'speedRpm 11': 800 },
    compute: given =>
      judgeIdle(IDLE.with(10, { timeS: 20, value: given['speedRpm 11'] ?? Number.NaN }), given),
    ranges: {
      minRpm: [1, 8000, 'rpm'],
      maxRpm: [1, 8000, 'rpm'],
      maxScatterRpm: [1, 8000, 'rpm'],
      maxDriftRpm: [1, 8000, 'rpm'],
      windowS: [5, 600, 's'],
    },
    ruleId: 'idle-trend',
    source: [/least-squares line.*NIST StRD Norris/],
    validity: [/at least 5 readings/],
    verdictUnits: ['rpm', 'rpm', 'rpm', 'rpm'],
  },
  {
    name: 'sweep',
    sound: { 'point 6 speedRpm': 1800, 'point 6 pressureKpa': 300, reliefKpa: 600 },
    compute: given =>
      judgeSweep(
        SWEEP.with(5, {
          speedRpm: given['point 6 speedRpm'] ?? Number.NaN,
          pressureKpa: given['point 6 pressureKpa'] ?? Number.NaN,
        }),
        given.reliefKpa,
      ),
    ranges: {},
    ruleId: 'oil-pressure-follows-speed',
    source: [/Spearman rank correlation/, /gear pump/, /delivers in proportion/],
    validity: [/at least 5 points/],
    verdictUnits: [''],
  },
  {
    name: 'warm-up',
    sound: { opensC: 82, fullyOpenC: 95, toleranceK: 4 },
    compute: given => readWarmUp([{ timeS: 0, value: 130 }], given),
    ranges: {
      opensC: [40, 120, 'degC'],
      fullyOpenC: [40, 120, 'degC'],
      toleranceK: [0.5, 20, 'K'],
    },
    ruleId: 'warm-up-first-order',
    source: [/first-order heating.*profile-likelihood 95 % interval/, /NIST StRD Misra1a/],
    validity: [/steady speed and load/],
  },
  {
    name: 'hold before the first sweep',
    sound: { runS: 100, holdS: 180 },
    compute: ({ runS, holdS }) => judgeWarmUpHold(runS, holdS),
    ranges: { runS: [0, 86_400, 's'], holdS: [180, 3600, 's'] },
    ruleId: 'warm-up-hold',
    source: [/common practice, no published source/],
    validity: [/first start/],
    verdictUnits: ['s'],
  },
  {
    name: 'cool-down',
    sound: { ambientC: 20, recheckC: 40 },
    compute: ({ ambientC, recheckC }) =>
      estimateCoolDown(
        [
          { timeS: 0, value: 30 },
          { timeS: 60, value: 30 },
        ],
        ambientC,
        recheckC,
      ),
    ranges: { ambientC: [-60, 60, 'degC'], recheckC: [20, 60, 'degC'] },
    ruleId: 'newton-cooling',
    source: [/Newton's law of cooling/],
    validity: [/standing still/],
  },
  {
    name: 'heat soak',
    sound: { coolantC: 92, soakRiseK: 10, capKpa: 100, altitudeM: 0, marginK: 5 },
    compute: ({ coolantC, soakRiseK, capKpa, altitudeM, marginK }) =>
      judgeHeatSoak({ coolantC, soakRiseK, capKpa, altitudeM, marginK }),
    ranges: {
      coolantC: [-60, 150, 'degC'],
      soakRiseK: [0, 40, 'K'],
      capKpa: [0, 200, 'kPa'],
      altitudeM: [-2000, 11_000, 'm'],
      marginK: [0, 40, 'K'],
    },
    ruleId: 'heat-soak-boil-margin',
    source: [/boiling point of water by IAPWS-IF97/, /ISO 2533/],
    validity: [/full, sealed system/],
    verdictUnits: ['degC', 'degC'],
  },
  {
    name: 'opening the cap',
    sound: { coolantC: 40, openBelowC: 50 },
    compute: ({ coolantC, openBelowC }) => judgeCapOpening(coolantC, openBelowC),
    ranges: { coolantC: [-60, 150, 'degC'], openBelowC: [20, 60, 'degC'] },
    ruleId: 'cap-cool-enough',
    source: [/common practice, no published source/],
    validity: [/thermostat housing or radiator/],
    verdictUnits: ['degC'],
  },
  {
    name: 'two readings of one quantity',
    sound: { one: 80, other: 82, oneTolerance: 1, otherTolerance: 2 },
    compute: given =>
      judgeAgreement(
        { value: given.one, tolerance: given.oneTolerance },
        { value: given.other, tolerance: given.otherTolerance },
        'degC',
      ),
    ranges: {
      one: [-1e6, 1e6, 'the unit of both'],
      other: [-1e6, 1e6, 'the unit of both'],
      oneTolerance: [0, 1e6, 'the unit of both'],
      otherTolerance: [0, 1e6, 'the unit of both'],
    },
    ruleId: 'two-readings-agree',
    source: [/worst case of two errors/],
    validity: [/one moment/],
    verdictUnits: ['degC'],
  },
  {
    name: 'fault code',
    sound: { spn: 157, fmi: 18 },
    compute: ({ spn, fmi }) => faultCode(spn, fmi),
    ranges: { spn: [1, 524_286, ''], fmi: [0, 31, ''] },
    ruleId: 'j1939-fault-code',
    source: [/SAE J1939-73/],
    validity: [/19 bits/],
  },
  {
    name: 'a watched fault',
    sound: { activeForS: 5, watchUntilS: 30 },
    compute: ({ activeForS, watchUntilS }) =>
      judgeFault({ spn: 157, fmi: { number: 18, text: '' } }, activeForS, [
        { spn: 157, action: { kind: 'watchUntil', seconds: watchUntilS ?? Number.NaN } },
      ]),
    ranges: { activeForS: [0, 1e7, 's'] },
    ruleId: 'fault-rules',
    source: [/blocks until a supervisor accepts it/],
    validity: [/active faults/],
  },
  {
    name: 'pressure of the air',
    sound: { altitudeM: 0 },
    compute: ({ altitudeM }) => atmosphericPressure(altitudeM),
    ranges: { altitudeM: [-2000, 11_000, 'm'] },
    ruleId: 'iso-2533-pressure',
    source: [/ISO 2533:1975/],
    validity: [/-2000 to 11000 m/],
  },
  {
    name: 'pressure of steam',
    sound: { temperatureC: 100 },
    compute: ({ temperatureC }) => saturationPressure(temperatureC),
    ranges: { temperatureC: [0, 373.946, 'degC'] },
    ...STEAM,
  },
  {
    name: 'boiling of water',
    sound: { pressureKpa: 101 },
    compute: ({ pressureKpa }) => saturationTemperature(pressureKpa),
    ranges: { pressureKpa: [0.611213, 22_064, 'kPa'] },
    ...STEAM,
  },
];
