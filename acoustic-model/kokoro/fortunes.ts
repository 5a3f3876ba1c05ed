import { readdirSync, readFileSync } from 'node:fs';
import { normalizeWording } from '../../src/voice/wording.ts';
import { wordPhones } from '../dictionary.ts';

const folder = '/usr/share/games/fortunes';
const noProse =
  /art$|startrek|^perl|linuxcookie|zippy|tao|knghtbrd|translate|debian|disclaimer|songs|\.|ethnic|drugs/;
const noSentence = /[0-9@/_*=<>[\]#&$%\\~^|+]|[A-Z]{3,}/;
const longestInWords = 30;

const wordsIn = (sentence: string) => sentence.split(' ').length;
const isKnown = (word: string) => wordPhones(word) !== undefined;

/** General English of Debian's `fortunes`: all words known, sentences with their commas. */
export interface EverydayTalk {
  readonly sentences: readonly string[];
  readonly words: readonly string[];
  /** Words that are in four sentences or more. */
  readonly commonWords: readonly string[];
}

export function everydayTalk(): EverydayTalk {
  const all = [
    ...new Set(
      readdirSync(folder)
        .filter(name => !noProse.test(name))
        .flatMap(name => readFileSync(`${folder}/${name}`, 'utf8').split('\n%\n'))
        // Who said it stands below, behind two dashes.
        .map(text => text.replace(/\n\s*--[\s\S]*$/, '').replaceAll(/\s+/g, ' '))
        .flatMap(text => text.split(/(?<=[a-z)'"][.!?;:])\s|--/))
        .filter(sentence => !noSentence.test(sentence))
        .map(sentence => sentence.replaceAll(/["“”()`]/g, '').trim())
        .filter(sentence => wordsIn(sentence) <= longestInWords),
    ),
  ];
  const counts = new Map<string, number>();
  for (const word of all.flatMap(sentence => normalizeWording(sentence).split(' '))) {
    counts.set(word, (counts.get(word) ?? 0) + 1);
  }
  const words = [...counts.keys()].filter(word => isKnown(word) && word.length > 1);
  return {
    sentences: all.filter(sentence => normalizeWording(sentence).split(' ').every(isKnown)),
    words,
    commonWords: words.filter(word => (counts.get(word) ?? 0) >= 4),
  };
}

/** Those of so many words, both ends included. */
export const ofLength = (sentences: readonly string[], low: number, high: number): readonly string[] =>
  sentences.filter(sentence => wordsIn(sentence) >= low && wordsIn(sentence) <= high);
