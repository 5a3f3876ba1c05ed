import { boilPoint, planMix } from '../../../src/engineering/coolant.ts';
import { freezePoint, type Glycol, massShareOf, shareForNight } from '../../../src/engineering/glycol.ts';
import { numberOf, type PublishedCheck, partOf } from '../check.ts';

/** Glycol, volume share, freezing point in degC, tolerance in K, where from. */
const FREEZING: readonly (readonly [Glycol, number, number, number, string])[] = [
  ['ethylene', 0.476, -33.8, 1e-9, 'ASHRAE Handbook, Fundamentals (2009), chapter 31, table 4: 50 % by mass'],
  ['ethylene', 0.375, -22.3, 1e-9, 'ASHRAE Handbook, Fundamentals (2009), chapter 31, table 4: 40 % by mass'],
  [
    'propylene',
    0.499,
    -33.5,
    1e-9,
    'ASHRAE Handbook, Fundamentals (2009), chapter 31, table 5: 50 % by mass',
  ],
  ['propylene', 0.3, -12.8, 1.5, "Lange's Handbook of Chemistry, 15th edition, table 5.13"],
  ['propylene', 0.4, -20.6, 1.5, "Lange's Handbook of Chemistry, 15th edition, table 5.13"],
  ['propylene', 0.5, -33.3, 1.5, "Lange's Handbook of Chemistry, 15th edition, table 5.13"],
  ['ethylene', 0.25, -12.2, 1.5, "Lange's Handbook of Chemistry, 15th edition, table 5.13 (from memory)"],
  ['ethylene', 0.385, -23.3, 1.5, "Lange's Handbook of Chemistry, 15th edition, table 5.13 (from memory)"],
  ['ethylene', 0.525, -40, 1.5, "Lange's Handbook of Chemistry, 15th edition, table 5.13 (from memory)"],
];

const openAtSeaLevel = { capPressureKpa: 0, altitudeM: 0 };

export const coolantChecks: readonly PublishedCheck[] = [
  ...FREEZING.map(([glycol, share, expected, tolerance, source]) => ({
    subject: 'coolant',
    source,
    quantity: `freezing point of ${(share * 100).toFixed(1)} % ${glycol} glycol by volume`,
    unit: 'degC',
    expected,
    tolerance,
    compute: () => numberOf(freezePoint(glycol, share)),
  })),
  {
    subject: 'coolant',
    source: 'ASHRAE Handbook, Fundamentals (2009), chapter 31, table 4',
    quantity: 'mass share of 47.6 % ethylene glycol by volume',
    unit: '',
    expected: 0.5,
    tolerance: 1e-9,
    compute: () => numberOf(massShareOf('ethylene', 0.476)),
  },
  {
    subject: 'coolant',
    source: 'ASTM D3306: 50 % by volume in water freezes at -36.4 degC or below (from memory)',
    quantity: 'share of ethylene glycol for -36.4 degC',
    unit: '',
    expected: 0.5,
    tolerance: 0.01,
    compute: () => numberOf(shareForNight('ethylene', { nightLowC: -36.4, marginK: 0 })),
  },
  {
    subject: 'coolant',
    source: 'ASTM D3306: 50 % ethylene glycol by volume boils at 108 degC or above (from memory)',
    quantity: 'boiling point of 50 % ethylene glycol, open, sea level',
    unit: 'degC',
    expected: 108,
    tolerance: 1,
    compute: () => numberOf(boilPoint('ethylene', { glycolShare: 0.5, ...openAtSeaLevel })),
  },
  {
    subject: 'coolant',
    source: "Makers' charts: 50 % propylene glycol by volume boils at 222 degF, 105.6 degC (from memory)",
    quantity: 'boiling point of 50 % propylene glycol, open, sea level',
    unit: 'degC',
    expected: 105.6,
    tolerance: 1,
    compute: () => numberOf(boilPoint('propylene', { glycolShare: 0.5, ...openAtSeaLevel })),
  },
  {
    subject: 'coolant',
    source: 'Boiling point of water at 101.325 kPa, IAPWS-95: 99.974 degC',
    quantity: 'boiling point of water, open, sea level',
    unit: 'degC',
    expected: 99.974,
    tolerance: 0.001,
    compute: () => numberOf(boilPoint('ethylene', { glycolShare: 0, ...openAtSeaLevel })),
  },
  {
    subject: 'coolant',
    source: 'common practice, no published source: half and half for a dry system',
    quantity: 'pure concentrate for a dry 40 litre system at 50 %',
    unit: 'litre',
    expected: 20,
    tolerance: 1e-9,
    compute: () =>
      partOf(
        planMix({ systemLitres: 40, inSystemLitres: 0, wantedShare: 0.5, concentrateShare: 1 }),
        plan => plan.concentrateLitres,
      ),
  },
];
