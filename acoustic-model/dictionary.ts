import { readFileSync } from 'node:fs';
import { packagedModel } from '../src/voice/decoders/soundswallower/load-node.ts';
import { voiceLanguage } from '../src/voice/languages/index.ts';
import type { SpokenLanguage } from '../src/voice/ports.ts';

/** The dictionary of a language's model, and what was added to it: all pronunciations of a word; none where unknown. */
export function dictionaryOf(language: SpokenLanguage): (word: string) => readonly string[] {
  const all = new Map<string, string[]>();
  for (const line of readFileSync(`${packagedModel(language)}/dict.txt`, 'utf8').split('\n')) {
    const [entry = '', ...phones] = line.trim().split(/\s+/);
    if (!/^[\p{L}']/u.test(entry) || phones.length === 0) continue;
    const word = entry.replace(/\(\d+\)$/, '');
    all.set(word, [...(all.get(word) ?? []), phones.join(' ')]);
  }
  for (const [word, phones] of Object.entries(voiceLanguage(language).hearing.pronunciations)) {
    all.set(word, [...new Set([...(all.get(word) ?? []), ...phones])]);
  }
  return word => all.get(word) ?? [];
}

const english = dictionaryOf('en');

/** All pronunciations of an English word; undefined when it is unknown. */
export function wordPhones(word: string): readonly string[] | undefined {
  const phones = english(word);
  return phones.length === 0 ? undefined : phones;
}
