import { viscosityAt } from '../../../src/engineering/oil-viscosity.ts';
import { viscosityIndex } from '../../../src/engineering/viscosity-index.ts';
import { numberOf, type PublishedCheck } from '../check.ts';

const at = (v40: number, v100: number, temperatureC: number) => () =>
  numberOf(
    viscosityAt(
      [
        { temperatureC: 40, viscosityMm2S: v40 },
        { temperatureC: 100, viscosityMm2S: v100 },
      ],
      temperatureC,
    ),
  );

/** Temperature in degC, viscosity in mm2/s. */
const INDEPENDENT = [
  [20, 130.66],
  [35, 58.08],
] as const;

/** Viscosity at 40 and 100 degC, published index, where from. */
const INDEX_EXAMPLES = [
  [73.3, 8.86, 92, 'ASTM D2270-10(2016), worked example of procedure A'],
  [22.83, 5.05, 156, 'ASTM D2270-10(2016), worked example of procedure B (from memory)'],
  [53.47, 7.8, 111, 'ASTM D2270-10(2016), second worked example of procedure B (from memory)'],
  [57.31, 7.8, 100, 'ASTM D2270-10(2016), table 1: H for 7.80 mm2/s'],
  [40.15, 6.2, 100, 'ASTM D2270-10(2016), table 1: H for 6.20 mm2/s'],
  [1023, 30, 0, 'ASTM D2270-10(2016), table 1: L for 30.0 mm2/s'],
] as const;

export const oilViscosityChecks: readonly PublishedCheck[] = [
  {
    subject: 'oil viscosity',
    source: 'Worked example of a public ASTM D341 spreadsheet (scribd.com, document 361017004)',
    quantity: 'viscosity at 80 degC of an oil with 32 mm2/s at 40 and 5.4 at 100 degC',
    unit: 'mm2/s',
    expected: 8.5,
    tolerance: 0.05,
    compute: at(32, 5.4, 80),
  },
  ...INDEPENDENT.map(([temperatureC, expected]) => ({
    subject: 'oil viscosity',
    source: 'Test values of an independent implementation of ASTM D341 (open-source library lubricalc)',
    quantity: `viscosity at ${temperatureC} degC of an oil with 46 mm2/s at 40 and 7 at 100 degC`,
    unit: 'mm2/s',
    expected,
    tolerance: 0.0051,
    compute: at(46, 7, temperatureC),
  })),
  ...INDEX_EXAMPLES.map(([viscosity40Mm2S, viscosity100Mm2S, expected, source]) => ({
    subject: 'viscosity index',
    source,
    quantity: `index for ${viscosity40Mm2S} and ${viscosity100Mm2S} mm2/s`,
    unit: '',
    expected,
    tolerance: 0.5,
    compute: () => numberOf(viscosityIndex({ viscosity40Mm2S, viscosity100Mm2S })),
  })),
];
