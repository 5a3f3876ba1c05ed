import { assessOils, oilGrade } from '../../../src/engineering/oil-grade.ts';
import { type PublishedCheck, partOf } from '../check.ts';

/** Winter grade: cranking limit in mPa s at degC, pumping temperature in degC, floor at 100 degC in mm2/s. */
const J300_WINTER = [
  ['0W', 6200, -35, -40, 3.8],
  ['5W', 6600, -30, -35, 3.8],
  ['10W', 7000, -25, -30, 4.1],
  ['15W', 7000, -20, -25, 5.6],
  ['20W', 9500, -15, -20, 5.6],
  ['25W', 13_000, -10, -15, 9.3],
] as const;

/** Hot grade: floor and ceiling at 100 degC in mm2/s. */
const J300_HOT = [
  ['8', 4, 6.1],
  ['12', 5, 7.1],
  ['16', 6.1, 8.2],
  ['20', 6.9, 9.3],
  ['30', 9.3, 12.5],
  ['40', 12.5, 16.3],
  ['50', 16.3, 21.9],
  ['60', 21.9, 26.1],
] as const;

const subject = 'oil grade';
const source = 'SAE J300 (January 2015), table 1';

export const oilGradeChecks: readonly PublishedCheck[] = [
  ...J300_WINTER.flatMap(([name, crankingMpaS, crankingC, pumpingC, min100]) => {
    const of = (part: 'maxCrankingMpaS' | 'crankingC' | 'pumpingC' | 'min100Mm2S') => () =>
      partOf(oilGrade(name), ({ winter }) => winter?.[part] ?? Number.NaN);
    const row = { subject, source, tolerance: 0 };
    return [
      {
        ...row,
        quantity: `${name} cranking limit`,
        unit: 'mPa s',
        expected: crankingMpaS,
        compute: of('maxCrankingMpaS'),
      },
      {
        ...row,
        quantity: `${name} cranking temperature`,
        unit: 'degC',
        expected: crankingC,
        compute: of('crankingC'),
      },
      {
        ...row,
        quantity: `${name} pumping temperature`,
        unit: 'degC',
        expected: pumpingC,
        compute: of('pumpingC'),
      },
      {
        ...row,
        quantity: `${name} floor at 100 degC`,
        unit: 'mm2/s',
        expected: min100,
        compute: of('min100Mm2S'),
      },
    ];
  }),
  ...J300_HOT.flatMap(([name, floor, ceiling]) => {
    const of = (part: 'min100Mm2S' | 'max100Mm2S') => () =>
      partOf(oilGrade(name), ({ hot }) => hot?.[part] ?? Number.NaN);
    const row = { subject, source, unit: 'mm2/s', tolerance: 0 };
    return [
      { ...row, quantity: `SAE ${name} floor at 100 degC`, expected: floor, compute: of('min100Mm2S') },
      { ...row, quantity: `SAE ${name} ceiling at 100 degC`, expected: ceiling, compute: of('max100Mm2S') },
    ];
  }),
  {
    subject,
    source: 'common practice, no published source: 15W-40 serves at average temperatures',
    quantity: '15W-40 suits a low of 0 degC and oil at 95 degC that must keep 12 mm2/s (1 = yes)',
    unit: '',
    expected: 1,
    tolerance: 0,
    compute: () =>
      partOf(
        assessOils([{ grade: '15W-40' }], { forecastLowC: 0, runningC: 95, minRunningViscosityMm2S: 12 }),
        oils => Number(oils[0]?.suits),
      ),
  },
];
