import { execFileSync } from 'node:child_process';
import { fileURLToPath } from 'node:url';

const program = fileURLToPath(new URL('./french.py', import.meta.url));
const vowel = /^[ieɛaɔouyøœə]/;

/** What a word is said like besides (a tilde, U+0303, would make another phone of its letter): each rule turns a pronunciation into another, or leaves it as it is. */
const variants: readonly ((phones: string) => string)[] = [
  // "quat' bars", "quatre-bars".
  phones => phones.replace(/( [ptkbdɡfv]) [ʁl]$/u, '$1'),
  phones => phones.replace(/( [ptkbdɡfv] [ʁl])$/u, '$1 ə'),
  // "r'vissée", "l'moteur", and "le" as a closed "leu".
  phones => phones.replace(/ə /u, ''),
  phones => phones.replace(/^(.) ə$/u, '$1'),
  phones => phones.replace(/ə/gu, 'ø'),
  // Before the last vowel few tell open from closed: "arrêtez", "moteur", "démarrer"; at a word's end neither: "prêt".
  phones => phones.replace(/ɛ(?!\u0303)(?=.* [ieɛaɔouyøœə])/gu, 'e'),
  phones => phones.replace(/e(?=.* [ieɛaɔouyøœə])/gu, 'ɛ'),
  phones => phones.replace(/o(?=.* [ieɛaɔouyøœə])/gu, 'ɔ'),
  phones => phones.replace(/ɔ(?!\u0303)(?=.* [ieɛaɔouyøœə])/gu, 'o'),
  phones => phones.replace(/ɛ$/u, 'e'),
];

/** What espeak does not say: letters, and numerals as they are before a consonant or a vowel. */
const more: Readonly<Record<string, readonly string[]>> = {
  cent: ['s ɑ̃ t'],
  cinq: ['s ɛ̃'],
  psi: ['p e ɛ s i'],
};

const isWord = (phones: string) => phones.split(' ').some(phone => vowel.test(phone)) || phones.length === 1;

/**
 * Pronunciations of French words, alone and as they are said in texts, by espeak-ng: its first is that of the word alone.
 * @param texts words apart by single spaces; those of which espeak makes another number of words add nothing
 */
export function frenchPronunciations(texts: readonly string[]): ReadonlyMap<string, readonly string[]> {
  const words = [...new Set(texts.flatMap(text => text.split(' ')))].filter(word => word !== '');
  const all = [...words, ...texts];
  const answer = execFileSync('python3', [program, '-'], { input: `${all.join('\n')}\n`, encoding: 'utf8' });
  const found = new Map<string, Set<string>>();
  answer
    .trim()
    .split('\n')
    .forEach((line, i) => {
      const phones = JSON.parse(line) as readonly string[] | null;
      const spoken = all[i]?.split(' ') ?? [];
      phones?.forEach((each, at) => {
        const word = spoken[at] ?? '';
        found.set(word, (found.get(word) ?? new Set()).add(each));
      });
    });
  return new Map(
    [...found].map(([word, usual]) => [
      word,
      [
        ...new Set([
          ...usual,
          ...[...usual].flatMap(phones => variants.map(vary => vary(phones))).filter(isWord),
          ...(more[word] ?? []),
        ]),
      ],
    ]),
  );
}
