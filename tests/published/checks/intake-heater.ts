import { interpolate } from '../../../src/engineering/curve.ts';
import { heaterWait } from '../../../src/engineering/intake-heater.ts';
import { numberOf, type PublishedCheck } from '../check.ts';

export const intakeHeaterChecks: readonly PublishedCheck[] = [
  {
    subject: 'intake heater',
    source:
      'Moran and Shapiro, Fundamentals of Engineering Thermodynamics, linear interpolation in table A-4: 0.2060 at 200, 0.2275 at 240 degC (from memory)',
    quantity: 'table read at 215 degC',
    unit: 'm3/kg',
    expected: 0.2141,
    tolerance: 5e-5,
    compute: () =>
      interpolate(
        [
          [200, 0.206],
          [240, 0.2275],
        ],
        215,
      ) ?? Number.NaN,
  },
  {
    subject: 'intake heater',
    source: "common practice, no published source: the wait is read from the engine maker's table",
    quantity: 'halfway between rows of 20 s and 10 s',
    unit: 's',
    expected: 15,
    tolerance: 1e-9,
    compute: () =>
      numberOf(
        heaterWait(
          [
            { temperatureC: -10, seconds: 20 },
            { temperatureC: 0, seconds: 10 },
          ],
          -5,
        ),
      ),
  },
];
