import { viscosityAt } from '../../engineering/oil-viscosity.ts';
import type { Profile } from '../../profile/schema.ts';

const COLDEST_OIL_C = -40;
const HOTTEST_OIL_C = 150;
const CURVE_STEP_C = 0.5;
const THICKEST_MM2_S = 2e7;

/**
 * Kinematic viscosity, mm2/s, by oil temperature, worked out once for each half degree from -40 to 150 degC;
 * beyond them the ends stand.
 */
export function viscosityCurve(
  grade: Profile['oil']['grades'][number] | undefined,
): (oilC: number) => number {
  const known = new Map<number, number>();
  return oilC => {
    const steps = Math.round(Math.min(HOTTEST_OIL_C, Math.max(COLDEST_OIL_C, oilC)) / CURVE_STEP_C);
    const before = known.get(steps);
    if (before !== undefined) return before;
    const found = viscosityAt(
      [
        { temperatureC: 40, viscosityMm2S: grade?.viscosity40Mm2S },
        { temperatureC: 100, viscosityMm2S: grade?.viscosity100Mm2S },
      ],
      steps * CURVE_STEP_C,
    );
    // The line has no answer only where the oil is as good as solid.
    const value = found.ok ? found.value : THICKEST_MM2_S;
    known.set(steps, value);
    return value;
  };
}
