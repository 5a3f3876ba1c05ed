import type { StepId } from '../../prompts/types.ts';
import { suitableGrades } from '../../src/engineering/oil-grade.ts';
import { judgeFirstPressure, judgeOilPressure } from '../../src/engineering/oil-pressure.ts';
import { judgeSweep, RELIEF_OPENS_SHARE } from '../../src/engineering/oil-pressure-sweep.ts';
import { fillTimeFactor, viscosityAt } from '../../src/engineering/oil-viscosity.ts';
import { type PrimingTime, primingTime } from '../../src/engineering/priming.ts';
import { factsOf, quantities } from '../../src/engineering/quantities/table.ts';
import { judge, ok, type Result, type Rule } from '../../src/engineering/result.ts';
import type { Profile } from '../../src/profile/schema.ts';
import type { Context } from '../context.ts';
import type { Judge, Judgement } from '../steps.ts';
import { latest, profileRule, within } from './readings.ts';
import { warmthOf } from './warmth.ts';

/** Grades of the profile that suit the coldest night and the running engine. */
export const gradesForNight = (context: Context): Result<readonly string[]> =>
  suitableGrades(context.profile.oil.grades, {
    forecastLowC: latest(context, 'coldestNight'),
    runningC: context.profile.oil.runningC,
    minRunningViscosityMm2S: context.profile.oil.minRunningViscosityMm2S,
  });

export const oilQuantity: Judge = within('oilQuantity', ({ profile: { oil } }) =>
  ok(
    { min: oil.capacityL - oil.toleranceL, max: oil.capacityL + oil.toleranceL },
    profileRule('oil-capacity'),
  ),
);

/** Seconds of cranking to oil pressure, with the thickest suitable oil at the temperature of now. */
export function primingSeconds(context: Context): Result<PrimingTime> {
  const { oil, priming, starter } = context.profile;
  const grades = gradesForNight(context);
  if (!grades.ok) return grades;
  let factor = 1;
  for (const { grade, viscosity40Mm2S, viscosity100Mm2S } of oil.grades) {
    if (!grades.value.includes(grade)) continue;
    const viscosity = viscosityAt(
      [
        { temperatureC: 40, viscosityMm2S: viscosity40Mm2S },
        { temperatureC: 100, viscosityMm2S: viscosity100Mm2S },
      ],
      latest(context, 'ambientTemperature'),
    );
    if (!viscosity.ok) return viscosity;
    const slower = fillTimeFactor({
      viscosityMm2S: viscosity.value,
      fullFlowViscosityMm2S: oil.fullFlowViscosityMm2S,
    });
    if (!slower.ok) return slower;
    factor = Math.max(factor, slower.value);
  }
  return primingTime({ ...priming, crankingRpm: starter.crankingRpm, viscosityFactor: factor });
}

/** Seconds of cranking before which no pump can have filled the engine with oil. */
export const earliestPressure: Judge = (context, seconds) => {
  const time = primingSeconds(context);
  return time.ok ? { ok: true, value: judge(seconds, 's', { min: time.value.earliestS }, time.rule) } : time;
};

const floorTable = (context: Context) =>
  context.profile.oilPressure.floor.map(row => ({
    oilC: row.oilC,
    floorKpa: row.points.map(({ rpm, minKpa }): readonly [number, number] => [rpm, minKpa]),
  }));

/** Where no floor is known, what is below every floor of the profile is too little all the same. */
function unlessBelowAll({ profile }: Context, pressureKpa: number, unjudged: Judgement): Judgement {
  const min = Math.min(
    ...profile.oilPressure.floor.flatMap(({ points }) => points.map(({ minKpa }) => minKpa)),
  );
  return pressureKpa < min
    ? { ok: true, value: judge(pressureKpa, 'kPa', { min }, profileRule('oil-pressure-lowest-floor')) }
    : unjudged;
}

/** Oil pressure against the profile's floor at a speed and an oil temperature. */
export function judgePressure(
  context: Context,
  pressureKpa: number,
  at: { readonly speedRpm: number; readonly oilC: number },
): Judgement {
  const judged = judgeOilPressure(pressureKpa, at, floorTable(context));
  return judged.ok ? judged : unlessBelowAll(context, pressureKpa, judged);
}

/** The floor at a speed, of oil as cold as the coolant can be by what was last read of it. */
export const pressureAt =
  (speedRpm: (context: Context) => number): Judge =>
  (context, si) => {
    const oilC = warmthOf(context)?.coldestC;
    if (oilC === undefined)
      return unlessBelowAll(context, si, {
        ok: false,
        issue: { code: 'missing', input: 'coolantTemperature' },
      });
    return judgePressure(context, si, { speedRpm: speedRpm(context), oilC });
  };

/** From here on a reading says nothing of the pump, kPa: the relief valve holds it there, or the bus shows no more. */
function tellsUpToKpa({ oilPressure: { reliefKpa }, bus }: Profile): number {
  const endsAt = bus?.readings.includes('oilPressure') ? factsOf('oilPressure').bus?.endsAt : undefined;
  return Math.min(reliefKpa, endsAt ?? reliefKpa);
}

/**
 * Above the floor at this speed; the last reading also closes the sweep, over which the pressure has to
 * rise with the speed. `sweepBefore`: the steps before the last one, by which their latest readings are found.
 */
export const sweepPressure =
  (index: number, sweepBefore: readonly StepId[] | null): Judge =>
  (context, si): Judgement => {
    const speeds = context.profile.sweeps.map(sweep => sweep.rpm);
    const floor = pressureAt(() => speeds[index] ?? 0)(context, si);
    if (!sweepBefore || !floor.ok || !floor.value.met) return floor;
    const readAt = sweepBefore.map(step => context.readings.findLast(reading => reading.step === step)?.si);
    const heldKpa = tellsUpToKpa(context.profile);
    if (readAt.includes(undefined)) return risesOver(readAt[0], si, heldKpa, floor);
    const points = [...readAt, si].map((pressureKpa, point) => ({
      speedRpm: speeds[point] ?? 0,
      pressureKpa: pressureKpa ?? Number.NaN,
    }));
    const sweep = judgeSweep(points, heldKpa);
    if (!sweep.ok) return sweep;
    // Oil that the relief valve holds at that much is no weak pump: nothing better can be read with it.
    return sweep.value.state === 'rises' || sweep.value.state === 'held'
      ? floor
      : { ok: false, line: 'pressureDoesNotFollow', verdict: sweep.value.rank };
  };

const sweepEnds: Rule = {
  id: 'oil-pressure-rises',
  source: 'a gear pump delivers in proportion to speed until the relief valve opens (closed form)',
  validity: 'both ends of a sweep, on one gauge',
};

/** Where only the ends of a sweep were told: higher at its end, by what a gauge may miss, or held by the relief valve. */
function risesOver(fromKpa: number | undefined, toKpa: number, heldKpa: number, floor: Judgement): Judgement {
  if (fromKpa === undefined) return { ok: false, issue: { code: 'missing', input: 'oilPressure' } };
  const min = quantities.oilPressure.tolerance;
  const rise = judge(toKpa - fromKpa, 'kPa', { min }, sweepEnds);
  const relieved = toKpa >= RELIEF_OPENS_SHARE * heldKpa;
  return rise.met || relieved ? floor : { ok: false, line: 'pressureDoesNotFollow', verdict: rise };
}

/** Seconds from first fire to oil pressure, held against what the engine allows. */
export const firstPressure: Judge = (context, seconds) => {
  const { showsKpa, firstFireWithinS } = context.profile.oilPressure;
  // That it shows is all that is said here; how much it is, is read off in the running checks.
  const first = judgeFirstPressure([{ timeS: seconds, value: showsKpa }], seconds, {
    leastKpa: showsKpa,
    withinS: firstFireWithinS,
  });
  return first.ok ? { ok: true, value: first.value.verdict } : first;
};
