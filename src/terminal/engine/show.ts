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
import { originText, valueName } from '../../interview/words.ts';
import { fields, sections, type ValueField, valueFields } from '../../profile/fields.ts';
import { assumedFields, unfitFor } from '../../profile/provenance.ts';
import type { Profile } from '../../profile/schema.ts';
import { demoJob } from '../../session/demo-job.ts';
import { unfitSentence } from './check.ts';
import { profileHash } from './profile-file.ts';

/** The value at a path; undefined where the engine has none. */
export const valueAt = (profile: Profile, path: string): unknown =>
  path
    .split('.')
    .reduce<unknown>(
      (at, key) => (typeof at === 'object' && at !== null ? Reflect.get(at, key) : undefined),
      profile,
    );

/** The name of a member as people would write it. */
const inWords = (key: string) => key.replaceAll(/[A-Z]/g, letter => ` ${letter.toLowerCase()}`);

/** A value in one line: lists by what they name, tables by their figures. */
export function valueText(value: unknown, language: Language, unit = ''): string {
  const tell = (sentence: string) => bySentence(sentence, language.bySentence);
  if (value === undefined) return tell('not said');
  if (value === null) return tell('none');
  if (typeof value === 'boolean') return tell(value ? 'yes' : 'no');
  if (Array.isArray(value)) return value.map(each => valueText(each, language)).join('; ') || tell('none');
  if (typeof value === 'object') {
    const named: unknown = Reflect.get(value, 'name');
    if (typeof named === 'string') return named;
    return Object.entries(value)
      .map(([key, inner]) =>
        key === 'kind' ? valueText(inner, language) : `${inWords(key)} ${valueText(inner, language)}`,
      )
      .join(', ');
  }
  return `${String(value)}${unit === '' ? '' : ` ${unit}`}`;
}

const sectionOf = (path: ValueField) => {
  const [first = ''] = path.split('.');
  return Object.entries(sections).find(([key]) => key === first)?.[1] ?? 'The engine';
};

/** Every value with where it comes from, by its part of the engine. */
export function sheetLines(profile: Profile, language: Language): string[] {
  const tell = (sentence: string) => bySentence(sentence, language.bySentence);
  let section = '';
  return valueFields.flatMap(path => {
    const value = valueAt(profile, path);
    const { unit }: { readonly unit?: string } = fields[path];
    const origin = profile.provenance[path];
    const from = origin === undefined ? tell('not said where from') : originText(origin, language);
    const title = sectionOf(path);
    const head = title === section ? [] : ['', tell(title)];
    section = title;
    return [...head, `  ${valueName(path, language)}: ${valueText(value, language, unit)}  [${from}]`];
  });
}

/** The steps that this engine makes, by phase. */
export function procedureLines(profile: Profile, language: Language): string[] {
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
export const SHOWN_AT_C = [-20, 5, 30] as const;
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

/** What the procedure would ask for on a day of this temperature. */
export function limitLines(profile: Profile, airC: number, language: Language): string[] {
  const day = dayOf(profile, airC);
  const { systemVoltage: volts, charging } = profile;
  const window = chargingWindow(volts, { ...charging, batteryC: airC });
  const lines = [
    `Limits at ${airC} °C, with a night of ${airC - NIGHT_COLDER_K} °C, at sea level`,
    `Coolant: ${said(coolantFill(day), mix => `${to(1)(mix.concentrateLitres)} L of concentrate and ${to(1)(mix.waterLitres)} L of water, good to ${to(0)(mix.freezeC)} °C`)}`,
    `It boils at: ${said(boilsAtC(day), value => `${to(0)(value)} °C`)}`,
    `Oil: ${said(gradesForNight(day), grades => grades.join(', '))}`,
    `Fuel: ${said(fuelAdvice(day), plan => `${to(0)(plan.no1Litres)} L of No. 1 and ${to(0)(plan.no2Litres)} L of No. 2`)}`,
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
export function showLines(profile: Profile, language: Language): string[] {
  const tell = (sentence: string) => bySentence(sentence, language.bySentence);
  const assumed = assumedFields(profile);
  return [
    `${profile.name}, version ${profile.version}, SHA-256 ${profileHash(profile)}`,
    ...(profile.invented ? [tell('An invented engine: for practice only.')] : []),
    tell(`${assumed.length} values are assumed.`),
    ...unfitFor(profile).map(each => unfitSentence(each, language)),
    ...sheetLines(profile, language),
    '',
    tell('The procedure'),
    ...procedureLines(profile, language),
    ...SHOWN_AT_C.flatMap(airC => limitLines(profile, airC, language)),
  ];
}
