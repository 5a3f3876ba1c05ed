import { chargingWindow, crankingFloor, stateOfCharge } from '../../../src/engineering/battery.ts';
import { heaterWait, judgeHeaterLamp } from '../../../src/engineering/intake-heater.ts';
import { starterState, starterWait } from '../../../src/engineering/starter.ts';
import type { Statement } from './statement.ts';

const STARTER = { limitC: 150, longestBurstS: 30, ratedAmbientC: 25, timeConstantS: 300 };
const STARTER_RANGES: Statement['ranges'] = {
  limitC: [60, 250, 'degC'],
  longestBurstS: [1, 120, 's'],
  ratedAmbientC: [-20, 60, 'degC'],
  timeConstantS: [10, 3600, 's'],
  ambientC: [-60, 60, 'degC'],
  'history[0].seconds': [0, 86_400, 's'],
};
const STARTER_RULE = {
  ruleId: 'starter-thermal-budget',
  source: [/Lumped capacitance/],
  validity: [/-60 to 60 degC/],
};

const HEATER = [
  { temperatureC: -30, seconds: 30 },
  { temperatureC: 30, seconds: 0 },
];
const HEATER_RULE = {
  ruleId: 'intake-heater-wait',
  source: [/engine profile.*common practice, no published source/],
  validity: [/coldest to the warmest row/],
};

/** Battery, starter and intake heater. */
export const electrics: readonly Statement[] = [
  {
    name: 'state of charge',
    sound: { restVoltageV: 12.5, batteryC: 20 },
    compute: given => stateOfCharge(12, given),
    ranges: { restVoltageV: [10.5, 13, 'V'], batteryC: [-40, 60, 'degC'] },
    ruleId: 'lead-acid-rest-voltage',
    source: [/Battery Council International/],
    validity: [/at rest for hours/],
  },
  {
    name: 'state of charge of two in series',
    sound: { restVoltageV: 25, batteryC: 20 },
    compute: given => stateOfCharge(24, given),
    ranges: { restVoltageV: [21, 26, 'V'] },
    ruleId: 'lead-acid-rest-voltage',
    source: [/Battery Council International/],
    validity: [/at rest for hours/],
  },
  {
    name: 'floor while cranking',
    sound: { batteryC: 20 },
    compute: ({ batteryC }) => crankingFloor(12, batteryC),
    ranges: { batteryC: [-40, 60, 'degC'] },
    ruleId: 'cranking-voltage-floor',
    source: [/Load-test table/],
    validity: [/strict in the cold/],
  },
  {
    name: 'charging window',
    sound: { setpointV: 14.1, toleranceV: 0.4, batteryC: 20 },
    compute: given => chargingWindow(12, given),
    ranges: { setpointV: [13, 15.5, 'V'], toleranceV: [0.05, 1, 'V'], batteryC: [-40, 60, 'degC'] },
    ruleId: 'charging-window',
    source: [/common practice, no published source/],
    validity: [/-40 to 60 degC/],
  },
  {
    name: 'starter',
    sound: { ...STARTER, ambientC: 20, 'history[0].seconds': 5 },
    compute: given =>
      starterState(given, given.ambientC, [{ cranking: true, seconds: given['history[0].seconds'] }]),
    ranges: STARTER_RANGES,
    ...STARTER_RULE,
  },
  {
    name: 'wait for the starter',
    sound: { ...STARTER, ambientC: 20, 'history[0].seconds': 5, wantedS: 10 },
    compute: given =>
      starterWait(
        given,
        given.ambientC,
        [{ cranking: true, seconds: given['history[0].seconds'] }],
        given.wantedS,
      ),
    ranges: { ...STARTER_RANGES, wantedS: [0, 30, 's'] },
    ...STARTER_RULE,
  },
  {
    name: 'wait for the heater',
    sound: { temperatureC: 0, 'table[1].temperatureC': 30, 'table[1].seconds': 0 },
    compute: given =>
      heaterWait(
        [
          { temperatureC: -60, seconds: 300 },
          { temperatureC: given['table[1].temperatureC'], seconds: given['table[1].seconds'] },
        ],
        given.temperatureC,
      ),
    ranges: {
      temperatureC: [-60, 60, 'degC'],
      'table[1].temperatureC': [-60, 60, 'degC'],
      'table[1].seconds': [0, 300, 's'],
    },
    ...HEATER_RULE,
  },
  {
    name: 'lamp of the heater',
    sound: { temperatureC: 0, lampOnS: 10, toleranceS: 5 },
    compute: given => judgeHeaterLamp(HEATER, given),
    ranges: { lampOnS: [0, 3600, 's'], toleranceS: [0, 300, 's'] },
    ...HEATER_RULE,
    verdictUnits: ['s'],
  },
];
