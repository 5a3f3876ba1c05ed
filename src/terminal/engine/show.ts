import { initialTransition } from 'xstate';
import { phaseOf } from '../../../machines/build-step.ts';
import type { Context } from '../../../machines/context.ts';
import { buildFirstStart, procedureFor } from '../../../machines/first-start.ts';
import { boilsAtC, coolantFill } from '../../../machines/limits/coolant.ts';
import { heaterSeconds, leastRestVoltage } from '../../../machines/limits/electrics.ts';
import { fuelAdvice } from '../../../machines/limits/fuel.ts';
import { gradesForNight, primingSeconds } from '../../../machines/limits/oil.ts';
import { burstSeconds } from '../../../machines/limits/starter.ts';
import { bySentence } from '../../../prompts/by-sentence.ts';
import type { Language } from '../../../prompts/types.ts';
import { chargingWindow, crankingFloor } from '../../engineering/battery.ts';
import { describeIssue, type Result } from '../../engineering/result.ts';
import { showBare, showNumber, unitLabel } from '../../interview/units.ts';
import { originText, valueName } from '../../interview/words.ts';
import { sections, type ValueField, valueFields } from '../../profile/fields.ts';
import { assumedFields, unfitFor } from '../../profile/provenance.ts';
import type { Profile } from '../../profile/schema.ts';
import { demoJob } from '../../session/demo-job.ts';
import type { UnitSystem } from '../../session/units.ts';
import { unfitSentence } from './check.ts';
import { profileHash } from './profile-file.ts';
import { type Reader, valueAt, valueText } from './value-text.ts';

const sectionOf = (path: ValueField) => {
  const [first = ''] = path.split('.');
  return Object.entries(sections).find(([key]) => key === first)?.[1] ?? 'The engine';
};

/** What an engine of this kind has no use for. */
const needless = (profile: Profile, path: ValueField): boolean =>
  (path === 'fuel.primer.runS' && profile.fuel.primer.kind === 'hand') ||
  (path === 'fuel.primer.maxStrokes' && profile.fuel.primer.kind === 'electric') ||
  (profile.provenance[path] === undefined && valueAt(profile, path) === undefined);

/** Every value with where it comes from, by its part of the engine. */
function sheetLines(profile: Profile, reader: Reader): string[] {
  const { language } = reader;
  const tell = (sentence: string) => bySentence(sentence, language.bySentence);
  const shown = valueFields.filter(path => !needless(profile, path));
  return [...new Set(shown.map(sectionOf))].flatMap(section => [
    '',
    tell(section),
    ...shown
      .filter(path => sectionOf(path) === section)
      .map(path => {
        const origin = profile.provenance[path];
        const from = origin === undefined ? tell('not said where from') : originText(origin, language);
        return `  ${valueName(path, language)}: ${valueText(profile, path, reader)}  [${from}]`;
      }),
  ]);
}

/** The steps that this engine makes, by phase. */
function procedureLines(profile: Profile, language: Language): string[] {
  const phases: Readonly<Record<string, string>> = language.phases;
  let before = '';
  return procedureFor(profile).flatMap(({ id }) => {
    const phase = phaseOf(id);
    const head = phase === before ? [] : ['', phases[phase] ?? phase];
    before = phase;
    return [...head, `  ${language.steps[id].title}`];
  });
}

/** The air for which limits are shown: a winter night, a cool day, a hot one. */
const SHOWN_AT_C = [-20, 5, 30] as const;
const NIGHT_COLDER_K = 5;
const ALTITUDE_M = 0;
const TANK_SHARE = 0.1;

/** The procedure as it stands before its first step, on a day of this temperature before a night of that. */
export function dayOf(profile: Profile, airC: number, nightC = airC - NIGHT_COLDER_K): Context {
  const [{ context }] = initialTransition(buildFirstStart(profile), { profile, job: demoJob });
  const read = (quantity: Context['readings'][number]['quantity'], si: number) =>
    ({ quantity, si, step: context.step, atMs: 0 }) as const;
  return {
    ...context,
    readings: [
      read('ambientTemperature', airC),
      read('coldestNight', nightC),
      read('altitude', ALTITUDE_M),
      read('fuelInTank', TANK_SHARE * profile.fuel.tankL),
    ],
  };
}

const said = <T>(result: Result<T>, show: (value: T) => string): string =>
  result.ok ? show(result.value) : describeIssue(result.issue);
const to = (digits: number) => (value: number) => value.toFixed(digits);
const tenths = (si: number, measure: 'volume' | 'tank', units: UnitSystem) =>
  `${Number(showBare(si, measure, units)).toFixed(1)} ${unitLabel(measure, units)}`;
const celsius = (si: number, units: UnitSystem) => showNumber(Math.round(si), 'temperature', units, 3);

/** What the procedure would ask for on a day of this temperature. */
function limitLines(profile: Profile, airC: number, { language, units }: Reader): string[] {
  const day = dayOf(profile, airC);
  const { systemVoltage: volts, charging } = profile;
  const window = chargingWindow(volts, { ...charging, batteryC: airC });
  const lines = [
    `Limits at ${celsius(airC, units)}, with a night of ${celsius(airC - NIGHT_COLDER_K, units)}, at sea level`,
    `Coolant: ${said(coolantFill(day), mix => `${tenths(mix.concentrateLitres, 'volume', units)} of concentrate and ${tenths(mix.waterLitres, 'volume', units)} of water, good to ${celsius(mix.freezeC, units)}`)}`,
    `It boils at: ${said(boilsAtC(day), value => celsius(value, units))}`,
    `Oil: ${said(gradesForNight(day), grades => grades.join(', '))}`,
    `Fuel, into a tank a tenth full: ${said(fuelAdvice(day), plan => `${tenths(plan.no1Litres, 'tank', units)} of No. 1 and ${tenths(plan.no2Litres, 'tank', units)} of No. 2`)}`,
    `Oil pressure after cranking for: ${said(primingSeconds(day), time => `${to(0)(time.earliestS)} s at the earliest, ${to(0)(time.expectedS)} s expected, given up after ${to(0)(time.giveUpS)} s`)}`,
    `First crank: ${to(0)(burstSeconds(day, 0, profile.starter.longestBurstS))} s at most`,
    `Heater: ${profile.heater ? `${to(0)(heaterSeconds(day))} s` : 'none'}`,
    `Battery at rest: ${said(leastRestVoltage(day), value => `${to(2)(value)} V or more`)}`,
    `While cranking: ${said(crankingFloor(volts, airC), value => `${to(1)(value)} V or more`)}`,
    `Charging: ${said(window, value => `${to(1)(value.minV)} to ${to(1)(value.maxV)} V`)}`,
  ];
  const [head = '', ...rest] = lines.map(line => bySentence(line, language.bySentence));
  return ['', head, ...rest.map(line => `  ${line}`)];
}

/** The whole sheet: values with their origins, the procedure they make, and the limits at three temperatures. */
export function showLines(profile: Profile, reader: Reader): string[] {
  const { language } = reader;
  const tell = (sentence: string) => bySentence(sentence, language.bySentence);
  const assumed = assumedFields(profile);
  return [
    `${profile.name}, version ${profile.version}, SHA-256 ${profileHash(profile)}`,
    ...(profile.invented ? [tell('An invented engine: for practice only.')] : []),
    tell(`${assumed.length} values are assumed.`),
    ...unfitFor(profile).map(each => unfitSentence(each, language)),
    ...sheetLines(profile, reader),
    '',
    tell('The procedure'),
    ...procedureLines(profile, language),
    ...SHOWN_AT_C.flatMap(airC => limitLines(profile, airC, reader)),
  ];
}
