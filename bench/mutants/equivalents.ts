import type { Survivor } from './figures.ts';

/** A mutant that changes nothing anybody could observe, by the text of its line, which moves with the code. */
interface Equivalent {
  readonly file: string;
  readonly text: string;
  /** Only the mutants of that line with one of these; all of its survivors where it is left out. */
  readonly replacements?: readonly string[];
  readonly why: string;
}

/** A second net under the arithmetic: the inputs were checked, and no allowed one gets this far. */
const NO_INPUT_TRIPS_IT = 'a guard on the result that no allowed input trips, by the ranges of the inputs';

/** Every survivor that is no hole in the tests. */
export const EQUIVALENTS: readonly Equivalent[] = [
  {
    file: 'src/engineering/battery.ts',
    text: "const VOLTS: Range = { min: 0, max: 60, unit: 'V' };",
    why: NO_INPUT_TRIPS_IT,
  },
  {
    file: 'src/engineering/battery.ts',
    text: "return okWithin(charge, { min: 0, max: 1, unit: '' }, REST, 'restVoltageV');",
    why: NO_INPUT_TRIPS_IT,
  },
  {
    file: 'src/engineering/battery.ts',
    text: "return okWithin(floorV * inSeries(nominalV), VOLTS, CRANKING, 'batteryC');",
    replacements: ['""'],
    why: NO_INPUT_TRIPS_IT,
  },
  {
    file: 'src/engineering/fault-rules.ts',
    text: 'acceptances: readonly FaultAcceptance[] = [],',
    why: 'an acceptance that is a bare text names no fault and accepts none',
  },
  {
    file: 'src/engineering/heat-soak.ts',
    text: 'if (!openC.ok) return openC;',
    replacements: ['false'],
    why: 'the air of an allowed altitude boils water within the range of the boiling curve',
  },
  {
    file: 'src/engineering/heat-soak.ts',
    text: 'if (!cappedC.ok) return cappedC;',
    replacements: ['false'],
    why: 'air and an allowed cap together stay within the range of the boiling curve',
  },
  {
    file: 'src/engineering/starter.ts',
    text: 'temperatureC >= model.limitC',
    replacements: ['false', 'temperatureC > model.limitC'],
    why: 'seconds to reach a temperature that is passed are 0 as well',
  },
  {
    file: 'src/engineering/starter.ts',
    text: 'if (wantedS <= nextBurst(model, nowC) + ROUNDING_S) return ok(0, RULE);',
    replacements: ['wantedS < nextBurst(model, nowC) + ROUNDING_S'],
    why: 'differs for a burst that is exactly one microsecond too long, and then by a rest of microseconds',
  },
  {
    file: 'src/engineering/starter.ts',
    text: 'return waitS <= HISTORY_S.max',
    replacements: ['waitS < HISTORY_S.max'],
    why: 'differs for a rest of exactly one day to the last bit, which no table of seconds holds',
  },
];

/** Why a survivor is no hole in the tests; undefined for one that is. */
export const whyEquivalent = (file: string, { text, replacement }: Survivor): string | undefined =>
  EQUIVALENTS.find(
    each => each.file === file && each.text === text && (each.replacements?.includes(replacement) ?? true),
  )?.why;
