import { bySentence } from '../../../prompts/by-sentence.ts';
import type { Language } from '../../../prompts/types.ts';
import { questions } from '../../interview/questions/index.ts';
import { showGrade } from '../../interview/typed.ts';
import { type Measure, showBare, showRounded } from '../../interview/units.ts';
import { fields, type ValueField } from '../../profile/fields.ts';
import type { Profile } from '../../profile/schema.ts';
import type { UnitSystem } from '../../session/units.ts';

/** Who reads it. */
export interface Reader {
  readonly language: Language;
  readonly units: UnitSystem;
}

/** What the units of the catalogue measure. */
const measures: Readonly<Record<string, Measure>> = {
  litre: 'volume',
  kPa: 'pressure',
  degC: 'temperature',
  K: 'kelvin',
  rpm: 'speed',
  s: 'time',
  V: 'voltage',
  share: 'share',
  'share by volume': 'share',
  'mm2/s': 'viscosity',
  '%': 'percent',
  ppm: 'ppm',
};

function measureOf(path: ValueField): Measure {
  const question = questions.find(({ id }) => id === path);
  if (question?.kind === 'number' || question?.kind === 'range') return question.measure;
  const { unit }: { readonly unit?: string } = fields[path];
  return measures[unit ?? ''] ?? 'count';
}

/** The value at a path; undefined where the engine has none. */
export const valueAt = (profile: Profile, path: string): unknown =>
  path
    .split('.')
    .reduce<unknown>(
      (at, key) => (typeof at === 'object' && at !== null ? Reflect.get(at, key) : undefined),
      profile,
    );

/** A choice as the interview words it; null where it offers none by this name. */
function choiceText(id: string, value: string, language: Language): string | null {
  const question = questions.find(question => question.id === id);
  const worded = question?.kind === 'choice' ? question.choices[value] : undefined;
  return worded === undefined ? null : bySentence(worded, language.bySentence);
}

const judgements = { blocks: 'blocks the start', goOn: 'may stay' } as const;

const names = (things: readonly { readonly name: string }[]) => things.map(({ name }) => name).join(', ');

/** What is more than one figure or word, part by part. */
const ofMoreParts: Readonly<
  Partial<Record<ValueField, (profile: Profile, reader: Reader) => string | null>>
> = {
  use: ({ use: { kind, ...places } }, { language }) =>
    // One switch may be named for two things, and a set may be without one.
    [choiceText('use', kind, language) ?? kind, ...new Set(Object.values(places))]
      .filter(place => place !== null)
      .join('; '),
  exhaust: ({ exhaust: { kind, ...places } }, { language }) =>
    [choiceText('exhaust', kind, language) ?? kind, ...Object.values(places)].join('; '),
  cutOff: ({ cutOff }) => cutOff?.at ?? null,
  'oil.grades': ({ oil }, { language, units }) =>
    oil.grades
      .map(
        each =>
          `${showGrade(each, units, language)} (${each.viscosity40Mm2S}/${each.viscosity100Mm2S} mm2/s)`,
      )
      .join(', '),
  'fuel.filters': ({ fuel }, { language }) =>
    fuel.filters.map(({ fit }) => choiceText('firstFilter', fit, language) ?? fit).join('; '),
  jacketHeater: ({ jacketHeater }) => jacketHeater?.at ?? null,
  prelube: ({ prelube }) => prelube?.port ?? null,
  firstRun: ({ firstRun }, { language }) =>
    firstRun && bySentence(`runs ${firstRun.runS} s, then drains ${firstRun.drainS} s`, language.bySentence),
  sensors: ({ sensors }) => names(sensors),
  lamps: ({ lamps }) => names(lamps),
  retorque: ({ retorque }) => names(retorque),
  heater: ({ heater }, { language, units }) => {
    if (!heater) return null;
    const waits = heater.waits.map(
      ({ atC, waitS }) => `${showRounded(atC, 'temperature', units)}: ${waitS} s`,
    );
    return [choiceText('heaterKind', heater.kind, language) ?? heater.kind, ...waits].join('; ');
  },
  'oilPressure.floor': ({ oilPressure }, { units }) =>
    oilPressure.floor
      .map(({ oilC, points }) => {
        const steps = points.map(({ rpm, minKpa }) => `${showRounded(minKpa, 'pressure', units)} ${rpm} rpm`);
        return `${showRounded(oilC, 'temperature', units)}: ${steps.join(', ')}`;
      })
      .join('; '),
  sweeps: ({ sweeps }) => (sweeps.length === 0 ? null : `${sweeps.map(({ rpm }) => rpm).join(', ')} rpm`),
  'shutdown.heatSoakLooksAfterS': ({ shutdown }) => `${shutdown.heatSoakLooksAfterS.join(', ')} s`,
  faults: ({ faults }, { language }) =>
    faults
      .map(({ spn, fmi, judgement, watchS, because }) => {
        const judged = judgement === 'watch' ? `watched for ${watchS} s` : judgements[judgement];
        return `SPN ${spn} FMI ${fmi}: ${bySentence(judged, language.bySentence)} (${because})`;
      })
      .join('; ') || null,
  bus: ({ bus }, { language }) =>
    bus
      ? `${bus.bitRate / 1000} kbit/s; ${bus.readings.map(reading => language.quantities[reading].name).join(', ')}`
      : null,
  allowedSkips: ({ allowedSkips }, { language }) =>
    allowedSkips.map(step => language.steps[step].title).join('; ') || null,
};

/** A value of a profile in one line, in the words and units of who reads it. */
export function valueText(profile: Profile, path: ValueField, reader: Reader): string {
  const { language, units } = reader;
  const tell = (sentence: string) => bySentence(sentence, language.bySentence);
  const value = valueAt(profile, path);
  if (value === undefined) return tell(profile.provenance[path] ? 'none' : 'not said');
  const parts = ofMoreParts[path];
  if (parts) return parts(profile, reader) ?? tell('none');
  if (typeof value === 'boolean') return tell(value ? 'yes' : 'no');
  if (path === 'idle.cold' || path === 'idle.warm') {
    const { minRpm, maxRpm } = profile.idle[path === 'idle.cold' ? 'cold' : 'warm'];
    return `${showBare(minRpm, 'speed', units)}-${showRounded(maxRpm, 'speed', units)}`;
  }
  if (typeof value === 'number')
    return choiceText(path, String(value), language) ?? showRounded(value, measureOf(path), units);
  return choiceText(path, String(value), language) ?? String(value);
}
