import type { Said } from '../../machines/context.ts';
import type { PromptValue, PromptValues, Quantity } from '../../machines/vocabulary.ts';
import type { Language } from '../../prompts/types.ts';
import { fmi } from '../engineering/fmi.ts';
import { describeIssue, type Issue } from '../engineering/result.ts';
import { sayNumber } from '../voice/number-words/say.ts';
import { ownWords, sentenceCase } from './sentence-case.ts';
import { asShownUnit, type ShownUnit, shownUnit, toUser, type UnitSystem, userUnit } from './units.ts';

/** One sentence in its two renderings: for the ear, with numbers in words, and for the eye. */
export interface Sentence {
  readonly spoken: string;
  readonly shown: string;
}

interface Manner {
  readonly language: Language;
  readonly units: UnitSystem;
  readonly spoken: boolean;
}

const MINUTE_S = 60;

/** What has no entry in a table of the language is said by its own name, so that nothing goes unsaid. */
const look = (table: Readonly<Record<string, string>>, key: string): string => table[key] ?? key;

const count = (value: number, { language, spoken }: Manner): string =>
  spoken ? sayNumber(value, 'grouped', 0, language.code) : String(value);

/** A number in figures, with the minus sign and the decimal mark of the language. */
const figures = (value: number, decimals: number, { words }: Language): string =>
  value.toFixed(decimals).replace('-', '−').replace('.', words.decimalMark);

function numberText(value: number, decimals: number, { language, spoken }: Manner): string {
  const rounded = Number(value.toFixed(decimals));
  // A whole value needs no "point zero" in the ear.
  const places = spoken && Number.isInteger(rounded) ? 0 : decimals;
  return spoken ? sayNumber(rounded, 'grouped', places, language.code) : figures(rounded, decimals, language);
}

function timeText(seconds: number, manner: Manner): string {
  const { language, spoken } = manner;
  const whole = Math.max(0, Math.round(seconds));
  const minutes = Math.floor(whole / MINUTE_S);
  const rest = whole % MINUTE_S;
  if (!spoken) return `${minutes}:${String(rest).padStart(2, '0')}`;
  const { words } = language;
  const endsInOne = new RegExp(` ${words.one}$`);
  const said = (amount: number, one: string, many: string) =>
    amount === 1 ? one : `${count(amount, manner).replace(endsInOne, ` ${words.oneOfTime}`)} ${many}`;
  const parts = [
    ...(minutes > 0 ? [said(minutes, words.minutesOne, words.minutes)] : []),
    ...(rest > 0 || minutes === 0 ? [said(rest, words.secondsOne, words.seconds)] : []),
  ];
  return parts.join(' ');
}

function measureText(si: number, siUnit: ShownUnit, manner: Manner, decimals?: number): string {
  if (siUnit === 's') return timeText(si, manner);
  const unit = userUnit(manner.units, siUnit);
  const names = manner.language.units[unit.id];
  const number = numberText(toUser(unit, si), decimals ?? unit.decimals, manner);
  return `${number} ${manner.spoken ? names.long : names.short}`.trim();
}

function bareNumber(quantity: Quantity, si: number, manner: Manner, decimals?: number): string {
  const unit = userUnit(manner.units, shownUnit(quantity));
  return numberText(toUser(unit, si), decimals ?? unit.decimals, manner);
}

/** Finer than this nobody types a gauge. */
const MOST_DECIMALS_SAID = 3;
const SAME = 1e-6;

/** As fine as it was typed, where that is finer than a gauge is told: nothing is rounded without a word. */
function decimalsSaid(quantity: Quantity, si: number, { units }: Manner): number {
  const unit = userUnit(units, shownUnit(quantity));
  const value = toUser(unit, si);
  for (let decimals = unit.decimals; decimals <= MOST_DECIMALS_SAID; decimals += 1)
    if (Math.abs(Number(value.toFixed(decimals)) - value) < SAME) return decimals;
  // Converted from another unit, it has no end.
  return unit.decimals;
}

const digitsText = (value: number, { language, spoken }: Manner): string =>
  spoken ? sayNumber(value, 'digitByDigit', 0, language.code) : String(value);

function limitsText(
  limits: { readonly unit: string; readonly min?: number; readonly max?: number; readonly of?: Quantity },
  manner: Manner,
): string {
  const { words } = manner.language;
  const siUnit = limits.of ? shownUnit(limits.of) : asShownUnit(limits.unit);
  const text = (si: number) => (siUnit ? measureText(si, siUnit, manner) : numberText(si, 2, manner));
  if (limits.min !== undefined && limits.max !== undefined)
    return fill(words.between, { min: text(limits.min), max: text(limits.max) });
  if (limits.min !== undefined) return fill(words.atLeast, { value: text(limits.min) });
  if (limits.max !== undefined) return fill(words.atMost, { value: text(limits.max) });
  return '';
}

/** "15W-40" as people say it: fifteen W forty. */
const oilGradeText = (grade: string, manner: Manner) =>
  manner.spoken
    ? grade.replace(
        /(\d+)W-(\d+)/,
        (_, cold: string, hot: string) => `${count(Number(cold), manner)} W ${count(Number(hot), manner)}`,
      )
    : grade;

/** What is wrong with an input, and what is allowed: both are told as the calculation names them. */
function issueText(issue: Issue, { issues }: Language): string {
  const { code, input, given, allowed } = issue;
  const reason = issues[code];
  if (reason === undefined) return describeIssue(issue);
  const what = given === undefined ? '' : ` (${given})`;
  return `${input}${what} ${reason}${allowed === undefined ? '' : ` (${allowed})`}.`;
}

/** What an FMI means, in words. */
export const showFailureMode = (number: number, { failureModes }: Language): string =>
  failureModes[number] ?? fmi(number)?.text ?? '';

/** How many of the words that stop everything are named: the shortest ones, which come first. */
const NAMED_EMERGENCY_WORDS = 3;

const emergencyWords = ({ stopWordings, words }: Language): string => {
  const list = [...stopWordings]
    .sort((one, other) => one.length - other.length)
    .filter((wording, _, all) => !all.some(other => other !== wording && wording.startsWith(`${other} `)))
    .slice(0, NAMED_EMERGENCY_WORDS)
    .map(wording => fill(words.quoted, { text: wording }))
    .join(', ');
  return fill(words.emergencyWords, { list });
};

/**
 * What stands between `<` and `>` in a sentence is for the eye only: units that the question before has named, limits
 * that are kept, the title of what was just spoken of.
 */
const forSense = (template: string, spoken: boolean): string =>
  spoken ? template.replace(/<[^>]*>/g, '') : template.replace(/[<>]/g, '');

/** A sentence with its blanks filled: `{name}` by what stands under that name. */
export const fill = (template: string, blanks: Readonly<Record<string, string>>) =>
  template.replace(/\{(\w+)\}/g, (_, name: string) => blanks[name] ?? '');

function valueText(value: PromptValue, manner: Manner): string {
  const { language, spoken } = manner;
  if (typeof value === 'string') return ownWords(value);
  if (typeof value === 'number') return numberText(value, Number.isInteger(value) ? 0 : 1, manner);
  if ('quantity' in value) return measureText(value.si, shownUnit(value.quantity), manner);
  if ('brief' in value) {
    const decimals = value.asSaid === true ? decimalsSaid(value.brief, value.si, manner) : undefined;
    return spoken
      ? bareNumber(value.brief, value.si, manner, decimals)
      : measureText(value.si, shownUnit(value.brief), manner, decimals);
  }
  if ('unit' in value) return measureText(value.si, value.unit, manner);
  if ('number' in value) return bareNumber(value.number.quantity, value.number.si, manner);
  if ('gelling' in value) return language.gelling[value.gelling];
  if ('reply' in value)
    return (language.replies as Readonly<Record<string, readonly string[]>>)[value.reply]?.[0] ?? value.reply;
  if ('cause' in value) return language.causes[value.cause];
  if ('gate' in value) return language.gates[value.gate];
  if ('person' in value) return language.people[value.person];
  if ('step' in value) return stepTitle(language, value.step);
  if ('phase' in value) return look(language.phases, value.phase);
  if ('point' in value) return language.inspectPoints[value.point];
  if ('item' in value)
    return fill(forSense(look(language.items, value.item), spoken), blanksOf(value.values ?? {}, manner));
  if ('emergencyWords' in value) return spoken ? '' : emergencyWords(language);
  if ('digits' in value) return digitsText(value.digits, manner);
  if ('valueName' in value) return look(language.values, value.valueName);
  if ('valueGroup' in value) return look(language.valueGroups, value.valueGroup);
  if ('quantityName' in value) return language.quantities[value.quantityName].name;
  if ('unitOf' in value) {
    const names = language.units[userUnit(manner.units, shownUnit(value.unitOf)).id];
    return spoken ? names.long : names.short;
  }
  if ('limits' in value) return limitsText(value.limits, manner);
  if ('issue' in value) return issueText(value.issue, language);
  if ('glycol' in value) return language.glycols[value.glycol];
  if ('oilGrade' in value) return oilGradeText(value.oilGrade, manner);
  if ('fuel' in value) return language.fuels[value.fuel];
  if ('code' in value)
    return spoken
      ? `${digitsText(value.code.spn, manner)}, ${count(value.code.fmi, manner)}`
      : `SPN ${value.code.spn} FMI ${value.code.fmi}`;
  if ('failureMode' in value) return showFailureMode(value.failureMode, language);
  if ('line' in value)
    return fill(forSense(language.lines[value.line], spoken), blanksOf(value.values, manner));
  const items = value.list.map(item => valueText(item, manner)).filter(item => item !== '');
  if (items.length === 0) return language.words.none;
  return items.join(value.joined === 'plain' ? ' ' : ', ');
}

const blanksOf = (values: PromptValues, manner: Manner): Record<string, string> =>
  Object.fromEntries(Object.entries(values).map(([name, value]) => [name, valueText(value, manner)]));

export const stepTitle = (language: Language, id: string): string =>
  (language.steps as Readonly<Record<string, { readonly title: string }>>)[id]?.title ?? id;

/** A mark that stands apart from its word, as in French, is not parted from it by a line's end. */
export const unparted = (text: string): string => text.replace(/ (?=[:;?!»])|(?<=«) /g, '\u00A0');

/** Puts what the machine says into words, for the ear and for the eye. */
export function wordSaid(said: Said, language: Language, units: UnitSystem): Sentence {
  const render = (spoken: boolean) => {
    const manner: Manner = { language, units, spoken };
    const template = said.line === 'ask' ? language.steps[said.step].ask : language.lines[said.line];
    const prefix = said.prefix ? `${language.lines[said.prefix]} ` : '';
    // What is only shown, or only spoken, leaves a gap in the other.
    return sentenceCase(
      `${prefix}${fill(forSense(template, spoken), blanksOf(said.values, manner))}`
        .replace(/ {2,}/g, ' ')
        .trim(),
    );
  };
  return { spoken: render(true), shown: unparted(render(false)) };
}

/** Something that is put into sentences, by itself, for the eye. */
export const showValue = (value: PromptValue, language: Language, units: UnitSystem): string =>
  unparted(sentenceCase(valueText(value, { language, units, spoken: false })));

/** The bare number in the user's unit, for the eye. */
export function showNumber(si: number, siUnit: ShownUnit, language: Language, units: UnitSystem): string {
  const unit = userUnit(units, siUnit);
  return figures(Number(toUser(unit, si).toFixed(unit.decimals)), unit.decimals, language);
}

/** A measured value for the eye: "42 psi". */
export const showMeasure = (si: number, unit: ShownUnit, language: Language, units: UnitSystem): string =>
  measureText(si, unit, { language, units, spoken: false });
