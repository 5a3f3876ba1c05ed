import { voiceLanguage } from '../languages/index.ts';
import { createMatcher, type Matcher, type Meaning } from '../meaning.ts';
import { sayNumber } from '../number-words/say.ts';
import type { Grammar, Heard, Recognizer, SpokenLanguage } from '../ports.ts';

/** A recognizer that is fed lines typed at a keyboard, in the wordings that would be spoken. */
export interface TypedRecognizer extends Recognizer {
  /** One line of text; what it means is reported before the call returns. */
  type(line: string): void;
}

/** A number in figures, on its own between spaces: "42", "12.6", "-5", and "12,6" where that is written. */
const figures = (marks: string) =>
  new RegExp(`(?<![^\\s])[-−+]?(?:\\d+(?:[${marks}]\\d+)?|[${marks}]\\d+)(?![^\\s%°])`, 'gu');

/** A sign that belongs to no figures ("- 5", "< 5", "5 ?") makes the line doubtful; a hyphen in a word does not. */
const straySign = /(?<!\p{L})[\p{Pd}−+]|[\p{Pd}−+](?!\p{L})|[<>=≤≥≈~±?]/u;

/** The line with its one number in words; a line with none, or with several, stays as it is. */
function figuresToWords(
  line: string,
  style: 'grouped' | 'digitByDigit',
  language: SpokenLanguage | undefined,
): string {
  const inFigures = figures(voiceLanguage(language).numbers.decimalMarks);
  const found = line.match(inFigures) ?? [];
  if (found.length !== 1) return line;
  return line.replace(inFigures, text => {
    const plain = text.replace('−', '-').replace(',', '.');
    const value = Number(plain);
    const decimals = /\.(\d*?)0*$/.exec(plain)?.[1]?.length ?? 0;
    const sayable = Math.abs(value) < 1e6 && decimals <= 3;
    return sayable ? sayNumber(value, style, decimals, language) : text;
  });
}

function meaningIn(
  matcher: Matcher,
  language: SpokenLanguage | undefined,
  text: string,
): Meaning | undefined {
  const readings = (['grouped', 'digitByDigit'] as const).map(style => figuresToWords(text, style, language));
  const [grouped, digitByDigit] = readings.map(words => matcher.meaningOf(words));
  const meaning = grouped ?? digitByDigit;
  const doubtful = readings.some(words => straySign.test(words));
  return doubtful && meaning?.kind !== 'stop' ? undefined : meaning;
}

/** Makes the keyboard's recognizer. What is typed is certain: its confidence is 1. */
export function createTypedRecognizer(): TypedRecognizer {
  let heard: (heard: Heard) => void = () => {};
  let matcher: Matcher | undefined;
  let language: SpokenLanguage | undefined;
  let stopOnly = false;
  let closed = false;

  return {
    listen(grammar: Grammar) {
      matcher = createMatcher(grammar);
      language = grammar.language;
    },
    onlyStop(active) {
      stopOnly = active;
    },
    onHeard(handler) {
      heard = handler;
    },
    onLevel() {},
    close() {
      closed = true;
    },
    type(line) {
      const text = line.trim();
      if (closed || matcher === undefined || text === '') return;
      const meaning = meaningIn(matcher, language, text);
      if (meaning?.kind === 'stop') heard({ kind: 'stop', text });
      else if (stopOnly) return;
      else if (meaning === undefined) heard({ kind: 'unclear', text, reason: 'outOfGrammar' });
      else heard({ ...meaning, text, confidence: 1 });
    },
  };
}
