import { biodieselShare } from '../../../src/engineering/biodiesel.ts';
import { blendCloudPoint, fuelByPractice } from '../../../src/engineering/fuel.ts';
import { numberOf, type PublishedCheck, partOf } from '../check.ts';

const RANKINE_AT_0_C = 491.67;

/** The other published blending rule, with another exponent: an outside figure for any blend. */
const semwal = (parts: readonly (readonly [share: number, cloudC: number])[]): number => {
  const sum = parts.reduce((total, [share, c]) => total + share * (c * 1.8 + RANKINE_AT_0_C) ** 13.45, 0);
  return (sum ** (1 / 13.45) - RANKINE_AT_0_C) / 1.8;
};

const practice = (nightLowC: number) => () =>
  partOf(fuelByPractice({ nightLowC, straightNo1BelowC: -25 }), fuel =>
    ['no2', 'blend', 'no1'].indexOf(fuel),
  );

const trade = { subject: 'fuel', unit: '', tolerance: 0 };

export const fuelChecks: readonly PublishedCheck[] = [
  ...[0.25, 0.5, 0.75].map(no1Share => ({
    subject: 'fuel',
    source:
      'Semwal and Varshney, Fuel 74 (1995): cloud point blending with exponent 13.45 in degrees Rankine',
    quantity: `cloud point of ${no1Share * 100} % No. 1 (-40 degC) in No. 2 (-9 degC)`,
    unit: 'degC',
    expected: semwal([
      [no1Share, -40],
      [1 - no1Share, -9],
    ]),
    tolerance: 3,
    compute: () =>
      numberOf(
        blendCloudPoint([
          { litres: no1Share, cloudC: -40 },
          { litres: 1 - no1Share, cloudC: -9 },
        ]),
      ),
  })),
  {
    ...trade,
    source: 'common practice, no published source: No. 2 serves to about 0 degC',
    quantity: 'fuel for 0 degC (0 = No. 2, 1 = blend, 2 = No. 1)',
    expected: 0,
    compute: practice(0),
  },
  {
    ...trade,
    source: 'common practice, no published source: below that a blend of No. 1 and No. 2',
    quantity: 'fuel for -10 degC (0 = No. 2, 1 = blend, 2 = No. 1)',
    expected: 1,
    compute: practice(-10),
  },
  {
    ...trade,
    source: 'common practice, no published source: far below that straight No. 1',
    quantity: 'fuel for -40 degC (0 = No. 2, 1 = blend, 2 = No. 1)',
    expected: 2,
    compute: practice(-40),
  },
  {
    ...trade,
    source: 'ASTM D7467 naming: B20 is 20 % biodiesel by volume, here mixed from B100 and B0',
    quantity: 'share of 20 litre B100 in 80 litre B0',
    expected: 0.2,
    tolerance: 1e-12,
    compute: () =>
      numberOf(
        biodieselShare([
          { litres: 20, biodieselShare: 1 },
          { litres: 80, biodieselShare: 0 },
        ]),
      ),
  },
];
