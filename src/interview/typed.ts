import { bySentence } from '../../prompts/by-sentence.ts';
import { languages } from '../../prompts/index.ts';
import type { Language } from '../../prompts/types.ts';
import type { Origin } from '../profile/provenance.ts';
import { gradeFault, usualSheet } from './oil-table.ts';
import type { NumberQuestion, OilAnswer, Question, QuestionId, Value } from './question.ts';
import { readNumber, showBare, showNumber, showRounded, type UnitChoice, unitLabel } from './units.ts';

/** What was typed, understood; or a sentence: what is wrong, and what is allowed. */
export type Typed =
  | { readonly ok: true; readonly value: Value; readonly origin: Origin }
  | { readonly ok: false; readonly sentence: string };

const no = (sentence: string) => ({ ok: false, sentence }) as const;

type Words = Language['typedWords'];

/** What may be typed for it, in any language. */
const typedFor = (what: keyof Words): readonly string[] => [
  ...new Set(Object.values(languages).flatMap(({ typedWords }) => typedWords[what])),
];
/** One of these, the longest first, as a part of a pattern. */
const anyOf = (words: readonly string[]) =>
  words
    .toSorted((one, other) => other.length - one.length)
    .map(word => word.replace('.', '\\.'))
    .join('|');

/** Whether this is one of the words for it, in any language. */
export const isWordFor = (what: keyof Words, typed: string): boolean =>
  typedFor(what).includes(typed.toLowerCase());

const sources = ['plate', 'manual', 'measured', 'seen', 'assumed'] as const;

const PAGE = `(?:${anyOf(typedFor('page'))})\\s*([0-9][0-9A-Za-z.-]{0,12})`;
const KIND = `(${anyOf(sources.flatMap(typedFor))})`;

/** Where a value comes from may be said behind it: `15 qt p 12`, `150 measured`, `82 manual`. */
const SOURCE = new RegExp(`(?:^|[\\s,;]+)(?:${PAGE}|${KIND})$`, 'i');

interface WithSource {
  readonly text: string;
  readonly origin: Origin | null;
}

function takeSource(typed: string): WithSource {
  const match = SOURCE.exec(typed);
  if (!match || match.index === 0) return { text: typed, origin: null };
  const [all, page, word] = match;
  const text = typed.slice(0, typed.length - all.length).trim();
  if (page !== undefined) return { text, origin: { from: 'manual', page } };
  return { text, origin: { from: sources.find(from => isWordFor(from, word ?? '')) ?? 'manual' } };
}

/** Where a value comes from, typed alone: `p 12`, `measured`; null for everything else. */
export function readSource(typed: string): Origin | null {
  const { text, origin } = takeSource(`x ${typed.trim()}`);
  return text === 'x' ? origin : null;
}

/** A name may end in a plate, or be "P 12": only behind a comma or a semicolon is it a source. */
const SOURCE_OF_WORDS = new RegExp(`[,;]\\s*(?:${PAGE}|${KIND})$`, 'i');

const takeSourceOfWords = (typed: string): WithSource =>
  SOURCE_OF_WORDS.test(typed) ? takeSource(typed) : { text: typed, origin: null };

/** What is called as its plate or the shop calls it: it may well end in "P 12". */
const asOnPlate: readonly QuestionId[] = ['name', 'engine.name'];

/** A last word that may be the source or belong to the name, as a sentence; null where there is none. */
function unclearSource(name: string, { id }: Question): string | null {
  const { text, origin } = takeSource(name);
  if (origin === null || (origin.page !== undefined && asOnPlate.includes(id))) return null;
  const word = name.slice(text.length).trim();
  return `"${word}" may be where it comes from, or the end of its name; write "${text}, ${word}" or "${name}, manual".`;
}

/** Reads what was typed as an answer; ranges are checked here, relations to other answers by `check`. */
export function readTyped(typed: string, question: Question, units: UnitChoice): Typed {
  const free = question.kind === 'words' || question.kind === 'names';
  const { text, origin } = free ? takeSourceOfWords(typed.trim()) : takeSource(typed.trim());
  const read = readValue(text, question, units);
  if (!read.ok) return read;
  const unclear = free && origin === null ? unclearSource(text, question) : null;
  if (unclear !== null) return no(unclear);
  const usual: Origin = { from: question.usual ?? (question.tier === 'plate' ? 'plate' : 'manual') };
  return { ok: true, value: read.value, origin: origin ?? usual };
}

type ReadValue =
  | { readonly ok: true; readonly value: Value }
  | { readonly ok: false; readonly sentence: string };
const yes = (value: Value) => ({ ok: true, value }) as const;

function readValue(text: string, question: Question, units: UnitChoice): ReadValue {
  switch (question.kind) {
    case 'number': {
      const read = readNumber(text, question.measure, units);
      if (!read.ok) return read;
      if (read.rest !== '') return no(`"${read.rest}" is one thing too many; give one number.`);
      const fault = numberFault(read.si, text, question, units);
      return fault === null ? yes(clean(read.si)) : no(fault);
    }
    case 'range':
      return readRange(text, question, units);
    case 'choice':
      return readChoice(text, question.choices);
    case 'yesNo':
      if (isWordFor('yes', text)) return yes(true);
      if (isWordFor('no', text)) return yes(false);
      return no(`"${text}" is neither; answer yes or no.`);
    case 'words':
      if (question.orNone && isWordFor('none', text)) return yes(null);
      if (text.length === 0) return no('Give it a name.');
      if (text.length > question.longest)
        return no(`That is ${text.length} letters long; ${question.longest} are allowed.`);
      return holdsStop(text) ? no(callItOtherwise(text)) : yes(text);
    case 'names':
      return readNames(text);
    case 'grades':
      return readGrades(text, units);
  }
}

const squeezed = (text: string) => text.toLowerCase().replaceAll(' ', '');

const wordsOf = (text: string): readonly string[] =>
  text
    .toLowerCase()
    .split(/[^\p{L}\p{N}]+/u)
    .filter(word => word.length > 2);

/** Whether this is the choice, its beginning, it with more behind, or has a word of it: `12 volt`, `fitted dry`. */
function isMeant(text: string, label: string): boolean {
  const [wanted, whole] = [squeezed(text), squeezed(label)];
  if (whole.startsWith(wanted) || wanted.startsWith(whole)) return true;
  return wordsOf(text).some(word => wordsOf(label).includes(word));
}

function readChoice(text: string, choices: Readonly<Record<string, string>>): ReadValue {
  const ids = Object.keys(choices);
  const byNumber = /^\d+$/.test(text) ? ids[Number(text) - 1] : undefined;
  // A word of the list goes before its number: "12" is 12 V, not the twelfth.
  const found = ids.find(id => id.toLowerCase() === text.toLowerCase()) ?? byNumber;
  if (found !== undefined) return yes(found);
  // "Not dry" has a word of the dry one.
  const typed = text.split(/\s+/);
  const denied = typed.length > 1 && typed.some(word => isWordFor('not', word));
  const meant =
    text === '' || denied ? [] : ids.filter(id => labelsOf(choices, id).some(label => isMeant(text, label)));
  const [only, other] = meant;
  if (only !== undefined && other === undefined) return yes(only);
  return only === undefined
    ? no(`"${text}" is none of these; give its number, 1 to ${ids.length}.`)
    : no(`"${text}" may be ${meant.map(id => ids.indexOf(id) + 1).join(', ')}; give the number.`);
}

/** What a choice is called, in every language. */
const labelsOf = (choices: Readonly<Record<string, string>>, id: string) =>
  Object.values(languages).map(language => bySentence(choices[id] ?? '', language.bySentence).toLowerCase());

/** Without what binary arithmetic leaves behind the twelfth figure. */
const clean = (si: number) => Number(si.toPrecision(12));

/**
 * What is wrong with a number.
 * @param given as it was typed: rounded it would be another one
 */
function numberFault(
  si: number,
  given: string,
  { measure, min, max, whole, because }: NumberQuestion,
  units: UnitChoice,
) {
  const slack = 1e-9 * Math.max(1, Math.abs(si));
  if (whole && Math.abs(si - Math.round(si)) > slack) return 'It has to be a whole number.';
  if (si >= min - slack && si <= max + slack) return null;
  const show = (number: number) => showNumber(number, measure, units);
  return because === undefined
    ? `${given} is not allowed; from ${show(min)} to ${show(max)} is.`
    : `${given} is not allowed; from ${show(min)} to ${show(max)} is: ${because}.`;
}

/** Between the two numbers of a range. */
const BETWEEN = new RegExp(`^(?:-|–|\\.\\.|(?:${anyOf(typedFor('to'))})(?=\\s))\\s*(.*)$`, 'i');

function readRange(text: string, question: NumberQuestion, units: UnitChoice): ReadValue {
  const [from, to] = question.example ?? [question.min, question.max];
  const how = `give two numbers, such as ${showBare(from, question.measure, units)}-${showNumber(to, question.measure, units)}.`;
  const first = readNumber(text, question.measure, units);
  if (!first.ok) return first;
  const rest = BETWEEN.exec(first.rest)?.[1];
  if (rest === undefined) return no(`That is one number; ${how}`);
  const second = readNumber(rest, question.measure, units);
  if (!second.ok) return second;
  if (second.rest !== '') return no(`"${second.rest}" is one thing too many; ${how}`);
  const faultIn = (si: number) => numberFault(si, showNumber(si, question.measure, units), question, units);
  const fault = faultIn(first.si) ?? faultIn(second.si);
  if (fault !== null) return no(fault);
  if (first.si >= second.si) return no(`The first has to be below the second; ${how}`);
  return yes([clean(first.si), clean(second.si)]);
}

const stopWordings = Object.values(languages).flatMap(({ stopWordings: own }) => own);

/** Names are read out beside a microphone that hears a stop ahead of everything. */
const holdsStop = (name: string): boolean => {
  const words = ` ${name.toLowerCase().replace(/[^\p{L}\p{N}']+/gu, ' ')} `;
  return stopWordings.some(wording => words.includes(` ${wording} `));
};
const callItOtherwise = (name: string) =>
  `"${name}" stops the session when it is read out; call it otherwise, such as shut-off lever.`;

const LONGEST_NAME = 60;
const MOST_NAMES = 24;

const BETWEEN_NAMES = new RegExp(`[,;]|\\s(?:${anyOf(typedFor('and'))})\\s`, 'i');

function readNames(text: string): ReadValue {
  const names = text
    .split(BETWEEN_NAMES)
    .map(name => name.trim())
    .filter(name => name !== '');
  if (names.length === 0) return no('Name at least one, with commas between.');
  if (names.length > MOST_NAMES) return no(`Those are ${names.length}; ${MOST_NAMES} are allowed.`);
  const long = names.find(name => name.length > LONGEST_NAME);
  if (long !== undefined) return no(`"${long}" is too long; ${LONGEST_NAME} letters are allowed.`);
  const stopping = names.find(holdsStop);
  return stopping === undefined ? yes(names) : no(callItOtherwise(stopping));
}

const MOST_GRADES = 8;
const GRADE = /^(\d{1,2})\s*w\s*-?\s*(\d{1,2})(?:\s+(\d+(?:\.\d+)?)\s*\/\s*(\d+(?:\.\d+)?))?$/i;
/** For which nights the maker allows it: `below 0 °F`, `above -10`. */
const NIGHTS = new RegExp(
  `\\s+(?:(${anyOf(typedFor('below'))})|(?:${anyOf(typedFor('above'))}))\\s+(\\S.*)$`,
  'i',
);
/** Said of the usual oil beside one for some nights only: it is what a grade alone means. */
const ALL_YEAR = new RegExp(`[\\s,]+(?:${anyOf(typedFor('allYear'))})$`, 'i');
const COLDEST_C = -60;
const WARMEST_C = 50;

type ReadGrade =
  | { readonly ok: true; readonly grade: OilAnswer }
  | { readonly ok: false; readonly sentence: string };

/** A grade with its data sheet, or with the usual one. */
function readSheet(text: string): ReadGrade {
  const match = GRADE.exec(text);
  if (!match)
    return no(`"${text}" is no grade; allowed: one such as 15W-40, or 15W-40 110/14.5 with its data sheet.`);
  const grade = `${match[1]}W-${match[2]}`;
  if (match[3] === undefined) {
    const usual = usualSheet(grade);
    return usual
      ? { ok: true, grade: usual }
      : no(`${grade} is no multigrade of SAE J300; allowed: one such as 15W-40.`);
  }
  const given = { grade, viscosity40Mm2S: Number(match[3]), viscosity100Mm2S: Number(match[4]) };
  const fault = gradeFault(given);
  return fault === null ? { ok: true, grade: given } : no(fault);
}

function readGrade(text: string, units: UnitChoice): ReadGrade {
  const nights = NIGHTS.exec(text);
  const read = readSheet(nights ? text.slice(0, nights.index) : text);
  if (!nights || !read.ok) return read;
  const limit = readNumber(nights[2] ?? '', 'temperature', units);
  if (!limit.ok) return limit;
  if (limit.rest !== '') return no(`"${limit.rest}" is one thing too many; give one number.`);
  const show = (si: number) => showNumber(si, 'temperature', units);
  if (limit.si < COLDEST_C || limit.si > WARMEST_C)
    return no(`${show(limit.si)} is not allowed; from ${show(COLDEST_C)} to ${show(WARMEST_C)} is.`);
  const bound = clean(limit.si);
  return {
    ok: true,
    grade: { ...read.grade, ...(nights[1] === undefined ? { nightsFromC: bound } : { nightsToC: bound }) },
  };
}

/** `15W-40, 10W-30 below 0 °F`, or with the data sheet at 40 and 100 °C: `15W-40 110/14.5`. */
function readGrades(text: string, units: UnitChoice): ReadValue {
  const parts = text
    .split(/[,;]/)
    .map(part =>
      part
        .trim()
        .replace(/^SAE\s+/i, '')
        .replace(ALL_YEAR, ''),
    )
    .filter(part => part !== '');
  if (parts.length === 0) return no('Name at least one, such as 15W-40.');
  if (parts.length > MOST_GRADES) return no(`Those are ${parts.length}; ${MOST_GRADES} are allowed.`);
  const grades: OilAnswer[] = [];
  for (const part of parts) {
    const read = readGrade(part, units);
    if (!read.ok) return read;
    grades.push(read.grade);
  }
  return yes(grades);
}

/** A grade with the nights for which it is allowed, where it is not for all. */
export function showGrade(
  { grade, nightsFromC, nightsToC }: OilAnswer,
  units: UnitChoice,
  { bySentence: table }: Language,
): string {
  const nights = [
    ...(nightsFromC === undefined
      ? []
      : [bySentence(`above ${showRounded(nightsFromC, 'temperature', units)}`, table)]),
    ...(nightsToC === undefined
      ? []
      : [bySentence(`below ${showRounded(nightsToC, 'temperature', units)}`, table)]),
  ];
  return [grade, ...nights].join(' ');
}

/** A value as it would be typed, in the units of the manual. */
export function showValue(value: Value, question: Question, units: UnitChoice, language: Language): string {
  const { bySentence: table } = language;
  if (value === null) return bySentence('none', table);
  if (typeof value === 'boolean') return bySentence(value ? 'yes' : 'no', table);
  if (typeof value === 'string')
    return question.kind === 'choice' ? bySentence(question.choices[value] ?? value, table) : value;
  if (typeof value === 'number')
    return question.kind === 'number' ? showRounded(value, question.measure, units) : String(value);
  if (question.kind === 'range') {
    const [from, to] = value;
    return typeof from === 'number' && typeof to === 'number'
      ? `${showBare(from, question.measure, units)}-${showNumber(to, question.measure, units)}`
      : '';
  }
  return value
    .map(each => (typeof each === 'object' ? showGrade(each, units, language) : String(each)))
    .join(', ');
}

/** The unit that is asked for, where it is a number with one. */
export const askedUnit = (question: Question, units: UnitChoice): string =>
  question.kind === 'number' || question.kind === 'range' ? unitLabel(question.measure, units) : '';
