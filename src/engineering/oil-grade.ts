import { type Given, located, type Range, refuse, take } from './checks.ts';
import { viscosityAt } from './oil-viscosity.ts';
import { fail, ok, type Result, type Rule } from './result.ts';

/** A winter grade: what the standard asks of it in the cold, and its floor at 100 degC. */
interface WinterGrade {
  /** Coldest temperature at which the standard still limits cranking viscosity, degC. */
  readonly crankingC: number;
  readonly maxCrankingMpaS: number;
  /** Coldest temperature at which it must still be pumped (60000 mPa s at most), degC. */
  readonly pumpingC: number;
  readonly min100Mm2S: number;
}

/** A hot grade: its range of kinematic viscosity at 100 degC, `max` excluded. */
interface HotGrade {
  readonly min100Mm2S: number;
  readonly max100Mm2S: number;
}

const RULE: Rule = {
  id: 'sae-j300',
  source: 'SAE J300 (January 2015), table 1; above 100 degC ASTM D341 from the data sheet',
  validity:
    'engine oils named by SAE grade, forecast lows from -60 to 50 degC, oil running at 60 to 150 degC',
};

const winter = (crankingC: number, maxCrankingMpaS: number, min100Mm2S: number): WinterGrade => ({
  crankingC,
  maxCrankingMpaS,
  pumpingC: crankingC - 5,
  min100Mm2S,
});

const WINTER_GRADES: ReadonlyMap<string, WinterGrade> = new Map([
  ['0W', winter(-35, 6200, 3.8)],
  ['5W', winter(-30, 6600, 3.8)],
  ['10W', winter(-25, 7000, 4.1)],
  ['15W', winter(-20, 7000, 5.6)],
  ['20W', winter(-15, 9500, 5.6)],
  ['25W', winter(-10, 13_000, 9.3)],
]);

const HOT_GRADES: ReadonlyMap<string, HotGrade> = new Map([
  ['8', { min100Mm2S: 4, max100Mm2S: 6.1 }],
  ['12', { min100Mm2S: 5, max100Mm2S: 7.1 }],
  ['16', { min100Mm2S: 6.1, max100Mm2S: 8.2 }],
  ['20', { min100Mm2S: 6.9, max100Mm2S: 9.3 }],
  ['30', { min100Mm2S: 9.3, max100Mm2S: 12.5 }],
  ['40', { min100Mm2S: 12.5, max100Mm2S: 16.3 }],
  ['50', { min100Mm2S: 16.3, max100Mm2S: 21.9 }],
  ['60', { min100Mm2S: 21.9, max100Mm2S: 26.1 }],
]);

/** What a grade such as `15W-40`, `10W` or `40` promises. */
interface OilGrade {
  readonly winter?: WinterGrade;
  readonly hot?: HotGrade;
}

/** The promises behind a grade's name (`15W-40`, `15W40`, `10W`, `40`). Source: SAE J300. */
export function oilGrade(name: string): Result<OilGrade> {
  const match = /^(?:(\d{1,2}W)(?:-?(\d{1,2}))?|(\d{1,2}))$/.exec(name.trim().toUpperCase());
  const winterName = match?.[1];
  const hotName = match?.[2] ?? match?.[3];
  const winterGrade = winterName === undefined ? undefined : WINTER_GRADES.get(winterName);
  const hotGrade = hotName === undefined ? undefined : HOT_GRADES.get(hotName);
  const unknown =
    match === null ||
    (winterName !== undefined && winterGrade === undefined) ||
    (hotName !== undefined && hotGrade === undefined);
  if (unknown) return fail('outOfRange', 'grade', { given: name, allowed: 'SAE J300 grades such as 15W-40' });
  return ok({ ...(winterGrade && { winter: winterGrade }), ...(hotGrade && { hot: hotGrade }) }, RULE);
}

/** An oil to choose from: its grade, and its data sheet if at hand (both viscosities in mm2/s, or neither). */
interface OilOnOffer {
  readonly grade: string;
  readonly viscosity40Mm2S?: Given;
  readonly viscosity100Mm2S?: Given;
  /** Coldest nights for which the engine's maker allows it, degC, both included; any where left out. */
  readonly nightsFromC?: number | undefined;
  readonly nightsToC?: number | undefined;
}

export type OilFault =
  /** No winter grade: the standard promises nothing about cranking it in the cold. */
  | 'noWinterGrade'
  /** The forecast low is below the temperature at which its cranking viscosity is limited. */
  | 'tooThickCold'
  /** At running temperature it can be thinner than the engine needs. */
  | 'tooThinHot'
  /** Above 100 degC the grade alone promises nothing: the data sheet is needed. */
  | 'needsDataSheet'
  /** The engine's maker allows it for other nights. */
  | 'notForThisNight';

interface OilAssessment {
  readonly grade: string;
  readonly suits: boolean;
  readonly faults: readonly OilFault[];
  /** Least viscosity at running temperature that grade or data sheet promise, mm2/s. */
  readonly runningViscosityMm2S?: number;
}

interface OilNeed {
  /** Coldest temperature at which the engine is to be cranked, degC, -60 to 50. */
  readonly forecastLowC?: Given;
  /** Temperature of the oil in the running engine, degC, 60 to 150. */
  readonly runningC?: Given;
  /** Least kinematic viscosity the engine needs at that temperature, mm2/s, 2 to 50. */
  readonly minRunningViscosityMm2S?: Given;
}

const FORECAST_C: Range = { min: -60, max: 50, unit: 'degC' };
const RUNNING_C: Range = { min: 60, max: 150, unit: 'degC' };
const NEED_MM2_S: Range = { min: 2, max: 50, unit: 'mm2/s' };
const SHEET_MM2_S: Range = { min: 2, max: 2e7, unit: 'mm2/s' };

/**
 * Each oil on offer held against the forecast low and the running temperature, with what speaks against it.
 * Refused: a grade or figure outside the standard, a data sheet that contradicts its grade or is half there,
 * an empty list. Source: SAE J300; above 100 degC ASTM D341.
 */
export function assessOils(oils: readonly OilOnOffer[], need: OilNeed): Result<readonly OilAssessment[]> {
  const given = take({
    forecastLowC: [need.forecastLowC, FORECAST_C],
    runningC: [need.runningC, RUNNING_C],
    minRunningViscosityMm2S: [need.minRunningViscosityMm2S, NEED_MM2_S],
  });
  if (!given.ok) return given;
  if (oils.length === 0) return fail('missing', 'oils', { allowed: 'at least one oil' });
  const { forecastLowC, runningC, minRunningViscosityMm2S } = given.values;

  const assessments: OilAssessment[] = [];
  for (const [place, oil] of oils.entries()) {
    const grade = oilGrade(oil.grade);
    if (!grade.ok) return located(grade, `oils[${place}]`);
    const running = runningFloor(oil, grade.value, runningC);
    if (!running.ok) return located(running, `oils[${place}]`);
    const faults: OilFault[] = [];
    if (grade.value.winter === undefined) faults.push('noWinterGrade');
    else if (forecastLowC < grade.value.winter.crankingC) faults.push('tooThickCold');
    if (running.value === undefined) faults.push('needsDataSheet');
    else if (running.value < minRunningViscosityMm2S) faults.push('tooThinHot');
    const { nightsFromC = Number.NEGATIVE_INFINITY, nightsToC = Number.POSITIVE_INFINITY } = oil;
    if (forecastLowC < nightsFromC || forecastLowC > nightsToC) faults.push('notForThisNight');
    assessments.push({
      grade: oil.grade,
      suits: faults.length === 0,
      faults,
      ...(running.value !== undefined && { runningViscosityMm2S: running.value }),
    });
  }
  return ok(assessments, RULE);
}

/** The grades of a list that suit, in the order given; `noSolution` when none does. See `assessOils`. */
export function suitableGrades(oils: readonly OilOnOffer[], need: OilNeed): Result<readonly string[]> {
  const assessed = assessOils(oils, need);
  if (!assessed.ok) return assessed;
  const grades = assessed.value.filter(({ suits }) => suits).map(({ grade }) => grade);
  return grades.length > 0 ? ok(grades, RULE) : fail('noSolution', 'oils', { allowed: 'another grade' });
}

function runningFloor(oil: OilOnOffer, grade: OilGrade, runningC: number): Result<number | undefined> {
  // A multigrade must meet the floor of both its grades.
  const floor = Math.max(grade.winter?.min100Mm2S ?? 0, grade.hot?.min100Mm2S ?? 0);
  if (oil.viscosity40Mm2S === undefined && oil.viscosity100Mm2S === undefined) {
    // Colder than 100 degC an oil is at least as thick as at 100 degC; hotter, it is thinner by an unknown amount.
    return ok(runningC <= 100 ? floor : undefined, RULE);
  }
  const refused = refuse({
    viscosity40Mm2S: [oil.viscosity40Mm2S, SHEET_MM2_S],
    viscosity100Mm2S: [oil.viscosity100Mm2S, SHEET_MM2_S],
  });
  if (refused) return refused;
  const ceiling = grade.hot?.max100Mm2S ?? Number.POSITIVE_INFINITY;
  const at100 = oil.viscosity100Mm2S ?? Number.NaN;
  if (!(at100 >= floor && at100 < ceiling)) {
    return fail('contradictory', 'viscosity100Mm2S', {
      given: at100,
      allowed: `the range of ${oil.grade}: ${floor} mm2/s up to below ${ceiling}`,
    });
  }
  return viscosityAt(
    [
      { temperatureC: 40, viscosityMm2S: oil.viscosity40Mm2S },
      { temperatureC: 100, viscosityMm2S: oil.viscosity100Mm2S },
    ],
    runningC,
  );
}
