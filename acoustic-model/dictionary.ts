import { readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { englishPronunciations } from './english-additions.ts';

/** The CMU Pronouncing Dictionary, as the package soundswallower brings it. */
const packaged = fileURLToPath(
  new URL('../node_modules/soundswallower/model/en-us/dict.txt', import.meta.url),
);

function dictionary(): ReadonlyMap<string, readonly string[]> {
  const all = new Map<string, string[]>();
  for (const line of readFileSync(packaged, 'utf8').split('\n')) {
    const [entry = '', ...phones] = line.trim().split(/\s+/);
    if (!/^[\p{L}']/u.test(entry) || phones.length === 0) continue;
    const word = entry.replace(/\(\d+\)$/, '');
    all.set(word, [...(all.get(word) ?? []), phones.join(' ')]);
  }
  for (const [word, phones] of Object.entries(englishPronunciations)) {
    all.set(word, [...new Set([...(all.get(word) ?? []), ...phones])]);
  }
  return all;
}

const english = dictionary();

/** All pronunciations of an English word; undefined when it is unknown. */
export const wordPhones = (word: string): readonly string[] | undefined => english.get(word);
