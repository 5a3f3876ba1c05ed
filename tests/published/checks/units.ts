import { fromSi, toSi } from '../../../src/engineering/units.ts';
import { numberOf, type PublishedCheck } from '../check.ts';

const source = 'NIST SP 811 (2008), appendix B.8';

export const unitsChecks: readonly PublishedCheck[] = [
  {
    subject: 'units',
    source,
    quantity: '1 psi',
    unit: 'kPa',
    expected: 6.894757,
    tolerance: 5e-7,
    compute: () => numberOf(toSi(1, 'psi')),
  },
  {
    subject: 'units',
    source,
    quantity: '1 bar',
    unit: 'kPa',
    expected: 100,
    tolerance: 0,
    compute: () => numberOf(toSi(1, 'bar')),
  },
  {
    subject: 'units',
    source,
    quantity: '1 US liquid quart',
    unit: 'litre',
    expected: 0.9463529,
    tolerance: 5e-8,
    compute: () => numberOf(toSi(1, 'usQuart')),
  },
  {
    subject: 'units',
    source,
    quantity: '1 US liquid gallon',
    unit: 'litre',
    expected: 3.785412,
    tolerance: 5e-7,
    compute: () => numberOf(toSi(1, 'usGallon')),
  },
  {
    subject: 'units',
    source: 'Definition of the Fahrenheit and Celsius scales: both read -40 at the same temperature',
    quantity: '-40 degC',
    unit: 'degF',
    expected: -40,
    tolerance: 1e-12,
    compute: () => numberOf(fromSi(-40, 'degF')),
  },
];
