import type { PublishedCheck } from '../check.ts';
import { atmosphereChecks } from './atmosphere.ts';
import { batteryChecks } from './battery.ts';
import { coolantChecks } from './coolant.ts';
import { fuelChecks } from './fuel.ts';
import { intakeHeaterChecks } from './intake-heater.ts';
import { oilGradeChecks } from './oil-grade.ts';
import { oilViscosityChecks } from './oil-viscosity.ts';
import { primingChecks } from './priming.ts';
import { regressionChecks } from './regression.ts';
import { saturationChecks } from './saturation.ts';
import { starterChecks } from './starter.ts';
import { unitsChecks } from './units.ts';
import { warmUpChecks } from './warm-up.ts';

/** Every published check there is: the test and the table in the docs both read this list. */
export const publishedChecks: readonly PublishedCheck[] = [
  ...unitsChecks,
  ...atmosphereChecks,
  ...saturationChecks,
  ...oilViscosityChecks,
  ...oilGradeChecks,
  ...fuelChecks,
  ...coolantChecks,
  ...batteryChecks,
  ...starterChecks,
  ...primingChecks,
  ...intakeHeaterChecks,
  ...regressionChecks,
  ...warmUpChecks,
];
