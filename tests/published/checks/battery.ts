import { chargingWindow, crankingFloor, stateOfCharge } from '../../../src/engineering/battery.ts';
import { numberOf, type PublishedCheck, partOf } from '../check.ts';

const BCI = [
  [12.65, 1],
  [12.45, 0.75],
  [12.24, 0.5],
  [12.06, 0.25],
  [11.89, 0],
] as const;

const LOAD_TEST = [
  [21, 9.6],
  [16, 9.5],
  [10, 9.4],
  [4, 9.3],
  [-1, 9.1],
  [-7, 8.9],
  [-12, 8.7],
  [-18, 8.5],
] as const;

const subject = 'battery';
const charging = { setpointV: 14.1, toleranceV: 0.4 };

export const batteryChecks: readonly PublishedCheck[] = [
  ...BCI.map(([restVoltageV, expected]) => ({
    subject,
    source: 'Battery Council International, state of charge against open-circuit voltage at 26.7 degC',
    quantity: `state of charge at ${restVoltageV} V`,
    unit: '',
    expected,
    tolerance: 1e-9,
    compute: () => numberOf(stateOfCharge(12, { restVoltageV, batteryC: 26.7 })),
  })),
  ...LOAD_TEST.map(([batteryC, expected]) => ({
    subject,
    source:
      'Load-test voltage table as printed in several vehicle service manuals (15 s at half cold-cranking current)',
    quantity: `least cranking voltage at ${batteryC} degC`,
    unit: 'V',
    expected,
    tolerance: 1e-9,
    compute: () => numberOf(crankingFloor(12, batteryC)),
  })),
  {
    subject,
    source:
      'Worked example of a public explanation of temperature compensation: 14.1 V at 25 degC, -3 mV/K per cell, at 5 degC',
    quantity: 'middle of the charging window at 5 degC',
    unit: 'V',
    expected: 14.46,
    tolerance: 0.005,
    compute: () =>
      partOf(chargingWindow(12, { ...charging, batteryC: 5 }), ({ minV, maxV }) => (minV + maxV) / 2),
  },
  {
    subject,
    source: 'common practice, no published source: a charged battery rests near 12.6 V',
    quantity: 'state of charge at 12.6 V and 25 degC',
    unit: '',
    expected: 1,
    tolerance: 0.1,
    compute: () => numberOf(stateOfCharge(12, { restVoltageV: 12.6, batteryC: 25 })),
  },
];
