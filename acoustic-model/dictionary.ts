import { readFileSync } from 'node:fs';
import { packagedModel } from '../src/voice/decoders/soundswallower/load-node.ts';
import { englishPronunciations } from '../src/voice/languages/pronunciations/english-additions.ts';

function readDictionary(): ReadonlyMap<string, readonly string[]> {
  const all = new Map<string, string[]>();
  for (const line of readFileSync(`${packagedModel()}/dict.txt`, 'utf8').split('\n')) {
    const [entry = '', ...phones] = line.trim().split(/\s+/);
    if (!/^[a-z']/.test(entry) || phones.length === 0) continue;
    const word = entry.replace(/\(\d+\)$/, '');
    all.set(word, [...(all.get(word) ?? []), phones.join(' ')]);
  }
  for (const [word, phones] of Object.entries(englishPronunciations)) {
    all.set(word, [...new Set([...(all.get(word) ?? []), ...phones])]);
  }
  return all;
}

const dictionary = readDictionary();

/** All pronunciations of a word; undefined when it is unknown. */
export const wordPhones = (word: string): readonly string[] | undefined => dictionary.get(word);
