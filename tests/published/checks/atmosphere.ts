import { atmosphericPressure } from '../../../src/engineering/atmosphere.ts';
import { numberOf, type PublishedCheck } from '../check.ts';

/** Geometric altitude in m, pressure in kPa. */
const ROWS = [
  [0, 101.325],
  [1000, 89.876],
  [3000, 70.121],
  [5000, 54.048],
] as const;

export const atmosphereChecks: readonly PublishedCheck[] = ROWS.map(([altitudeM, expected]) => ({
  subject: 'atmosphere',
  source: 'US Standard Atmosphere 1976, table 1, geometric altitude; same as ISO 2533:1975 (from memory)',
  quantity: `pressure at ${altitudeM} m`,
  unit: 'kPa',
  expected,
  tolerance: 0.001,
  compute: () => numberOf(atmosphericPressure(altitudeM)),
}));
