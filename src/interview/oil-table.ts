import { oilGrade } from '../engineering/oil-grade.ts';
import { viscosityAt } from '../engineering/oil-viscosity.ts';
import type { OilAnswer } from './question.ts';

/**
 * How many times thicker a multigrade is at 40 than at 100 °C, by its winter grade: usual data sheets, from memory.
 * Only the time that cold oil takes to the gauge hangs on it.
 */
const TIMES_THICKER: ReadonlyMap<string, number> = new Map([
  ['0W', 5.5],
  ['5W', 6.2],
  ['10W', 6.8],
  ['15W', 7.6],
  ['20W', 8.5],
  ['25W', 9],
]);

const tenth = (value: number) => Math.round(value * 10) / 10;

/** The usual data sheet of a multigrade: the middle of its range at 100 °C (SAE J300), and what that is at 40 °C. */
export function usualSheet(grade: string): OilAnswer | undefined {
  const known = oilGrade(grade);
  const times = TIMES_THICKER.get(grade.split('-')[0] ?? '');
  if (!known.ok || !known.value.hot || times === undefined) return undefined;
  const { min100Mm2S, max100Mm2S } = known.value.hot;
  const floor = Math.max(min100Mm2S, known.value.winter?.min100Mm2S ?? 0);
  if (floor >= max100Mm2S) return undefined;
  const viscosity100Mm2S = tenth((floor + max100Mm2S) / 2);
  return { grade, viscosity100Mm2S, viscosity40Mm2S: Math.round(viscosity100Mm2S * times) };
}

/** Least viscosity at 100 °C that all of these grades promise, mm2/s. */
export function leastPromised(grades: readonly OilAnswer[]): number | undefined {
  const promised = grades.flatMap(({ grade }) => {
    const known = oilGrade(grade);
    return known.ok ? [Math.max(known.value.hot?.min100Mm2S ?? 0, known.value.winter?.min100Mm2S ?? 0)] : [];
  });
  return promised.length === 0 ? undefined : Math.min(...promised);
}

/** How thick each of these is at this temperature by its data sheet, mm2/s, thinnest first. */
export const runningViscosities = (grades: readonly OilAnswer[], runningC: number): readonly number[] =>
  grades
    .flatMap(({ viscosity40Mm2S, viscosity100Mm2S }) => {
      const sheet = [
        { temperatureC: 40, viscosityMm2S: viscosity40Mm2S },
        { temperatureC: 100, viscosityMm2S: viscosity100Mm2S },
      ] as const;
      const running = viscosityAt(sheet, runningC);
      return running.ok ? [running.value] : [];
    })
    .sort((one, other) => one - other);

/** What is wrong with a grade and its data sheet, as a sentence; null where nothing is. */
export function gradeFault({ grade, viscosity40Mm2S, viscosity100Mm2S }: OilAnswer): string | null {
  const known = oilGrade(grade);
  if (!known.ok || !known.value.hot || !known.value.winter)
    return `${grade} is no multigrade of SAE J300; allowed: one such as 15W-40.`;
  const floor = Math.max(known.value.hot.min100Mm2S, known.value.winter.min100Mm2S);
  const { max100Mm2S } = known.value.hot;
  if (viscosity100Mm2S < floor || viscosity100Mm2S >= max100Mm2S)
    return `${grade} has from ${floor} up to ${max100Mm2S} mm2/s at 100 °C, not ${viscosity100Mm2S}.`;
  if (viscosity40Mm2S <= 2 * viscosity100Mm2S || viscosity40Mm2S > 1000)
    return `${grade} at 40 °C has to be more than twice as thick as at 100 °C, and 1000 mm2/s at most.`;
  return null;
}
