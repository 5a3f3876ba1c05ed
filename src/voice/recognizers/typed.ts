import { createMatcher, type Matcher } from '../meaning.ts';
import type { Grammar, Heard, Recognizer } from '../ports.ts';
import { readTyped } from './typed-number.ts';

/** A recognizer that is fed lines typed at a keyboard, in the wordings that would be spoken. */
export interface TypedRecognizer extends Recognizer {
  /** One line of text; what it means is reported before the call returns. */
  type(line: string): void;
}

/** The keyboard's words for a number reach no further than the ear's; figures do. */
const inWords = (grammar: Grammar): Grammar =>
  grammar.number && grammar.number.digitsOnly !== true
    ? {
        ...grammar,
        number: {
          ...grammar.number,
          min: Math.max((grammar.number.inWords ?? grammar.number).min, -MOST_IN_WORDS),
          max: Math.min((grammar.number.inWords ?? grammar.number).max, MOST_IN_WORDS),
        },
      }
    : grammar;

/** Below the largest whole number that has words, and on the step of every gauge. */
const MOST_IN_WORDS = 9000;

/** A sign that belongs to no figures ("- 5", "< 5", "5 ?") makes the line doubtful; a hyphen in a word does not. */
const straySign = /(?<!\p{L})[\p{Pd}−+]|[\p{Pd}−+](?!\p{L})|[<>=≤≥≈~±?]/u;

function heardIn(matcher: Matcher, { number }: Grammar, text: string): Heard {
  const meaning = matcher.meaningOf(text);
  if (meaning?.kind === 'stop') return { ...meaning, text };
  const typed = number && readTyped(text, number);
  if (number && typed?.kind === 'number')
    return { kind: 'number', id: number.id, value: typed.value, text, confidence: 1 };
  if (typed) return { kind: 'unclear', text, reason: 'outOfRange' };
  if (meaning === undefined || straySign.test(text)) return { kind: 'unclear', text, reason: 'outOfGrammar' };
  return { ...meaning, text, confidence: 1 };
}

/** Makes the keyboard's recognizer. What is typed is certain: its confidence is 1. */
export function createTypedRecognizer(): TypedRecognizer {
  let heard: (heard: Heard) => void = () => {};
  let matcher: Matcher | undefined;
  let asked: Grammar | undefined;
  let stopOnly = false;
  let closed = false;

  return {
    listen(grammar: Grammar) {
      matcher = createMatcher(inWords(grammar));
      asked = grammar;
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
      if (closed || matcher === undefined || asked === undefined || text === '') return;
      const meant = heardIn(matcher, asked, text);
      if (meant.kind === 'stop' || !stopOnly) heard(meant);
    },
  };
}
