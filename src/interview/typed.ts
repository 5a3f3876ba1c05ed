import { bySentence } from '../../prompts/by-sentence.ts';
import { languages } from '../../prompts/index.ts';
import type { Language } from '../../prompts/types.ts';
import type { Origin } from '../profile/provenance.ts';
import { gradeFault, usualSheet } from './oil-table.ts';
import type { NumberQuestion, OilAnswer, Question, QuestionId, Value } from './question.ts';
import { readNumber, showBare, showNumber, type UnitChoice, unitLabel } from './units.ts';

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

const sources = ['plate', 'manual', 'measured', 'assumed'] as const;

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

/** What is called as its plate or the shop calls it, whatever that ends in. */
const asOnPlate: readonly QuestionId[] = ['name', 'engine.name'];

/** A last word that may be the source or belong to the name, as a sentence; null where there is none. */
function unclearSource(name: string): string | null {
  const { text, origin } = takeSource(name);
  if (origin === null) return null;
  const word = name.slice(text.length).trim();
  return `"${word}" may be where it comes from, or the end of its name; write "${text}, ${word}" or "${name}, manual".`;
}

/** Reads what was typed as an answer; ranges are checked here, relations to other answers by `check`. */
export function readTyped(typed: string, question: Question, units: UnitChoice): Typed {
  const free = question.kind === 'words' || question.kind === 'names';
  const { text, origin } = free ? takeSourceOfWords(typed.trim()) : takeSource(typed.trim());
  const unclear = free && origin === null && !asOnPlate.includes(question.id) ? unclearSource(text) : null;
  if (unclear !== null) return no(unclear);
  const read = readValue(text, question, units);
  if (!read.ok) return read;
  const usual: Origin = { from: question.tier === 'plate' ? 'plate' : 'manual' };
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
      const fault = numberFault(read.si, question, units);
      return fault === null ? yes(clean(read.si)) : no(fault);
    }
    case 'range':
      return readRange(text, question, units);
    case 'choice': {
      const ids = Object.keys(question.choices);
      const lower = text.toLowerCase();
      const byNumber = /^\d+$/.test(text) ? ids[Number(text) - 1] : undefined;
      const begun = ids.filter(
        id =>
          lower !== '' &&
          (id.toLowerCase() === lower ||
            labelsOf(question.choices, id).some(label => label.startsWith(lower))),
      );
      // A word of the list goes before its number: "12" is 12 V, not the twelfth.
      const found =
        ids.find(id => id.toLowerCase() === lower) ?? byNumber ?? (begun.length === 1 ? begun[0] : undefined);
      return found === undefined
        ? no(`"${text}" is none of these; give its number, 1 to ${ids.length}.`)
        : yes(found);
    }
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
      return readGrades(text);
  }
}

/** What a choice is called, in every language. */
const labelsOf = (choices: Readonly<Record<string, string>>, id: string) =>
  Object.values(languages).map(language => bySentence(choices[id] ?? '', language.bySentence).toLowerCase());

/** Without what binary arithmetic leaves behind the twelfth figure. */
const clean = (si: number) => Number(si.toPrecision(12));

function numberFault(si: number, { measure, min, max, whole }: NumberQuestion, units: UnitChoice) {
  const slack = 1e-9 * Math.max(1, Math.abs(si));
  if (whole && Math.abs(si - Math.round(si)) > slack) return 'It has to be a whole number.';
  if (si >= min - slack && si <= max + slack) return null;
  return `${showNumber(si, measure, units)} is not allowed; from ${showNumber(min, measure, units)} to ${showNumber(max, measure, units)} is.`;
}

/** Between the two numbers of a range. */
const BETWEEN = new RegExp(`^(?:-|–|\\.\\.|(?:${anyOf(typedFor('to'))})(?=\\s))\\s*(.*)$`, 'i');

function readRange(text: string, question: NumberQuestion, units: UnitChoice): ReadValue {
  const how = `give two numbers, such as ${showBare(question.min, question.measure, units)}-${showNumber(question.max, question.measure, units)}.`;
  const first = readNumber(text, question.measure, units);
  if (!first.ok) return first;
  const rest = BETWEEN.exec(first.rest)?.[1];
  if (rest === undefined) return no(`That is one number; ${how}`);
  const second = readNumber(rest, question.measure, units);
  if (!second.ok) return second;
  if (second.rest !== '') return no(`"${second.rest}" is one thing too many; ${how}`);
  const fault = numberFault(first.si, question, units) ?? numberFault(second.si, question, units);
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

function readNames(text: string): ReadValue {
  const names = text
    .split(',')
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

/** `15W-40, 5W-40`, or with the data sheet at 40 and 100 °C: `15W-40 110/14.5`. */
function readGrades(text: string): ReadValue {
  const parts = text
    .split(',')
    .map(part => part.trim())
    .filter(part => part !== '');
  if (parts.length === 0) return no('Name at least one, such as 15W-40.');
  if (parts.length > MOST_GRADES) return no(`Those are ${parts.length}; ${MOST_GRADES} are allowed.`);
  const grades: OilAnswer[] = [];
  for (const part of parts) {
    const match = GRADE.exec(part);
    if (!match)
      return no(
        `"${part}" is no grade; allowed: one such as 15W-40, or 15W-40 110/14.5 with its data sheet.`,
      );
    const grade = `${match[1]}W-${match[2]}`;
    const usual = usualSheet(grade);
    if (match[3] === undefined) {
      if (!usual) return no(`${grade} is no multigrade of SAE J300; allowed: one such as 15W-40.`);
      grades.push(usual);
      continue;
    }
    const given = { grade, viscosity40Mm2S: Number(match[3]), viscosity100Mm2S: Number(match[4]) };
    const fault = gradeFault(given);
    if (fault !== null) return no(fault);
    grades.push(given);
  }
  return yes(grades);
}

/** A value as it would be typed, in the units of the manual. */
export function showValue(
  value: Value,
  question: Question,
  units: UnitChoice,
  { bySentence: table }: Language,
): string {
  if (value === null) return bySentence('none', table);
  if (typeof value === 'boolean') return bySentence(value ? 'yes' : 'no', table);
  if (typeof value === 'string')
    return question.kind === 'choice' ? bySentence(question.choices[value] ?? value, table) : value;
  if (typeof value === 'number')
    return question.kind === 'number' ? showNumber(value, question.measure, units) : String(value);
  if (question.kind === 'range') {
    const [from, to] = value;
    return typeof from === 'number' && typeof to === 'number'
      ? `${showBare(from, question.measure, units)}-${showNumber(to, question.measure, units)}`
      : '';
  }
  return value.map(each => (typeof each === 'object' ? each.grade : String(each))).join(', ');
}

/** The unit that is asked for, where it is a number with one. */
export const askedUnit = (question: Question, units: UnitChoice): string =>
  question.kind === 'number' || question.kind === 'range' ? unitLabel(question.measure, units) : '';
