import { mkdirSync, readdirSync, readFileSync } from 'node:fs';
import { procedureReplies } from '../bench/procedure-replies.ts';
import { english } from '../prompts/en/index.ts';
import { phrasesOf } from '../src/voice/number-words/forms.ts';
import { formsOf } from '../src/voice/number-words/slot.ts';
import type { Grammar } from '../src/voice/ports.ts';
import { normalizeWording } from '../src/voice/wording.ts';
import { chanceOf } from './chance.ts';
import { wordPhones } from './dictionary.ts';
import { nearStop } from './kokoro/workshop-talk.ts';
import { type TrainingText, writeTexts } from './texts-file.ts';

const [, , folder = '.cache/acoustic-model', count = '20000', seed = '20261125'] = process.argv;
const { random, oneOf, sometimes } = chanceOf(Number(seed));

function numberIn({ number }: Grammar): string | undefined {
  if (number === undefined) return undefined;
  const value = oneOf(phrasesOf(oneOf(formsOf(number))));
  const lead = number.leads.length > 0 && (number.leadNeeded || sometimes(0.4)) ? oneOf(number.leads) : '';
  const unit = number.units.length > 0 && sometimes(0.4) ? oneOf(number.units) : '';
  return `${lead} ${value} ${unit}`.trim();
}

/** A sentence of everyday English from Debian's `fortunes`, or a run of its words in any order. */
function otherTalk(sentences: readonly string[], words: readonly string[]): string {
  if (sometimes(0.6)) return oneOf(sentences);
  return Array.from({ length: 1 + Math.floor(random() * 6) }, () => oneOf(words)).join(' ');
}

const fortunes = '/usr/share/games/fortunes';
const bookish = [
  'fortunes',
  'literature',
  'people',
  'wisdom',
  'work',
  'food',
  'sports',
  'men-women',
  'kids',
  'riddles',
];

function fortuneSentences(): readonly string[] {
  const text = readdirSync(fortunes)
    .filter(name => bookish.includes(name))
    .map(name => readFileSync(`${fortunes}/${name}`, 'utf8'))
    .join('\n');
  const sentences = text.replaceAll(/\s+/g, ' ').split(/[.!?%;:]|--/);
  return sentences
    .map(sentence =>
      sentence
        .toLowerCase()
        .replaceAll(/[^a-z' ]/g, ' ')
        .replaceAll(/\s+/g, ' ')
        .trim(),
    )
    .filter(sentence => {
      const words = sentence.split(' ');
      return words.length >= 2 && words.length <= 9 && words.every(word => wordPhones(word) !== undefined);
    });
}

function phonesOf(text: string): string | undefined {
  const words = text.split(' ').map(word => {
    const all = wordPhones(word);
    return all === undefined ? undefined : all[0];
  });
  return words.every(word => word !== undefined) ? words.join(' ') : undefined;
}

const grammars = [
  ...new Map((await procedureReplies()).map(({ grammar }) => [JSON.stringify(grammar), grammar])).values(),
];
const withNumbers = grammars.filter(({ number }) => number !== undefined);
const wordings = [
  ...new Set([
    ...Object.values(english.replies).flat(),
    ...grammars.flatMap(({ replies }) => replies.flatMap(reply => reply.wordings)),
  ]),
];
const stops = english.stopWordings;
const sentences = fortuneSentences();
const everydayWords = [...new Set(sentences.flatMap(sentence => sentence.split(' ')))];
const digits = 'zero oh one two three four five six seven eight nine niner point minus'.split(' ');

/** So many texts: replies, numbers, stop wordings alone and within talk, what is near to them, and other talk. */
function makeTexts(count: number): readonly TrainingText[] {
  const made: TrainingText[] = [];
  while (made.length < count) {
    const kind = random();
    let text: string;
    let sort: TrainingText['kind'] = 'reply';
    if (kind < 0.28) text = oneOf(wordings);
    else if (kind < 0.5) text = numberIn(oneOf(withNumbers)) ?? '';
    else if (kind < 0.58)
      text = Array.from({ length: 1 + Math.floor(random() * 6) }, () => oneOf(digits)).join(' ');
    else if (kind < 0.63)
      text = Array.from({ length: 1 + Math.floor(random() * 3) }, () => oneOf(wordings)).join(' ');
    else if (kind < 0.71) [text, sort] = [oneOf(stops), 'stop'];
    else if (kind < 0.74)
      [text, sort] = [`${oneOf(wordings)} ${oneOf(stops)} ${sometimes(0.5) ? oneOf(sentences) : ''}`, 'stop'];
    else if (kind < 0.8) [text, sort] = [oneOf(nearStop), 'other'];
    else [text, sort] = [otherTalk(sentences, everydayWords), 'other'];
    const normalized = normalizeWording(text);
    const phones = phonesOf(normalized);
    if (phones !== undefined && phones !== '') made.push({ text: normalized, phones, kind: sort });
  }
  return made;
}

mkdirSync(folder, { recursive: true });
const texts = makeTexts(Number(count));
writeTexts(folder, texts);
console.log(
  `${texts.length} texts from ${grammars.length} grammars, ${wordings.length} wordings and ${sentences.length} sentences.`,
);
