import { languages } from '../../prompts/index.ts';
import type { Language, LanguageCode } from '../../prompts/types.ts';
import type { UnitSystem } from '../session/units.ts';
import { fill } from '../session/wording.ts';
import { type Names, namesIn } from './names.ts';
import { type Counted, type ReportWords, reportWords } from './words/index.ts';

/** How a report is written: in which language, with which frame around it, in which units. */
export interface Manner {
  /** What the session says. */
  readonly language: Language;
  /** What the report says around it. */
  readonly words: ReportWords;
  readonly name: Names;
  readonly units: UnitSystem;
  /** The words for so many, with the number in the blank `{n}` and the other blanks filled. */
  counted(amount: number, words: Counted, blanks?: Readonly<Record<string, string>>): string;
}

export function mannerOf(code: LanguageCode, units: UnitSystem): Manner {
  const language = languages[code];
  const words = reportWords[code];
  const rules = new Intl.PluralRules(words.locale);
  return {
    language,
    words,
    units,
    name: namesIn(language, words),
    counted: (amount, { one, many }, blanks = {}) =>
      fill(rules.select(amount) === 'one' ? one : many, { n: String(amount), ...blanks }),
  };
}
