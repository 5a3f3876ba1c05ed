import { mkdirSync, writeFileSync } from 'node:fs';
import { procedureReplies } from '../../bench/procedure-replies.ts';
import { english } from '../../prompts/en/index.ts';
import { chanceOf } from '../chance.ts';
import { wordPhones } from '../dictionary.ts';
import { collection } from './collection.ts';
import { everydayTalk, ofLength } from './fortunes.ts';
import { anyDigits, spokenNumbers, teensAndTens, upToAHundred } from './numbers.ts';
import { aroundOurWords, nearStop, workshopTalk } from './workshop-talk.ts';

/*
 * Writes what the mixed voices say: our words in every form in which they are said, what is near to them and must not
 * be taken for them, and talk that is neither. Commas stay where a speaker would make them heard.
 */
const [, , folder = '.cache/kokoro', seed = '20261128'] = process.argv;
const chance = chanceOf(Number(seed));
const { random, oneOf, sometimes, wholeBetween } = chance;

const words = new Map<string, readonly string[]>();

/** Whether every word of it can be pronounced, which is kept. */
function canBeSaid(said: string): boolean {
  for (const word of said.replaceAll(',', '').split(' ')) {
    const phones = wordPhones(word);
    if (phones === undefined) return false;
    words.set(word, phones);
  }
  return true;
}

const texts = collection(canBeSaid);
const { keep, many } = texts;

const grammars = [
  ...new Map((await procedureReplies()).map(({ grammar }) => [JSON.stringify(grammar), grammar])).values(),
];
const slots = grammars.flatMap(({ number }) => (number === undefined ? [] : [number]));
const units = [
  ...new Set([
    ...slots.flatMap(slot => slot.units),
    ...Object.values(english.units).flatMap(unit => unit.said),
  ]),
].filter(unit => unit !== '');
const leads = [...new Set(slots.flatMap(slot => slot.leads))];
const wordings = [
  ...new Set([
    ...Object.values(english.replies).flat(),
    ...grammars.flatMap(({ replies }) => replies.flatMap(reply => reply.wordings)),
  ]),
];
const controls = Object.values(english.controls).flat();
const stops = english.stopWordings;
const quoted = /"((?:[^"\\]|\\.)*)"/g;
const prompts = [...JSON.stringify([english.lines, english.steps]).matchAll(quoted)]
  .flatMap(([line]) => String(JSON.parse(line)).split(/[.?!:;]/))
  .filter(line => !line.includes('{'));

const everyday = everydayTalk();
const tiny = ofLength(everyday.sentences, 1, 5);
const short = ofLength(everyday.sentences, 1, 12);
const medium = ofLength(everyday.sentences, 5, 13);
const long = ofLength(everyday.sentences, 7, 30);
const numbers = spokenNumbers(chance, slots);

function withUnit(): string {
  const lead = leads.length > 0 && sometimes(0.15) ? oneOf(leads) : '';
  return `${lead} ${numbers.any()} ${sometimes(0.6) ? oneOf(units) : ''}`;
}

const before = 'no|wait|hey|look out|oh no|quick|oil|fire|smoke|leak|please|right now'.split('|');
const after = 'now|please|right now|there is smoke|it leaks|quick|no no|something is wrong|turn it off'.split(
  '|',
);

function withStop(): string {
  const stop = oneOf(stops);
  const kind = random();
  if (kind < 0.2) return `${stop}, ${oneOf(stops)}`;
  if (kind < 0.3) return `stop, stop, ${stop}`;
  if (kind < 0.55) return `${oneOf(wordings)}, ${stop}`;
  if (kind < 0.7) return `${oneOf(before)}, ${stop}`;
  if (kind < 0.85) return `${stop}, ${oneOf(after)}`;
  return `${numbers.any()}, ${stop}`;
}

function oursInTalk(): string {
  const ours = sometimes(0.55) ? oneOf(wordings) : `${numbers.any()} ${sometimes(0.7) ? oneOf(units) : ''}`;
  return aroundOurWords(oneOf, ours);
}

function nearInTalk(): string {
  const near = oneOf(nearStop);
  return sometimes(0.5) ? `${near}, ${oneOf(wordings)}` : `${oneOf(tiny)}, ${near}`;
}

/** Our own words with a sound of "stop" in them, which are said most often of all that is near to it. */
function soundsLikeStop(wording: string): boolean {
  return /\bs[tkpqm]|[oau]p\b|st[aeiou]/.test(wording);
}

function longSentence(): string {
  const first = oneOf(long);
  if (first.split(' ').length > 13) return first;
  return `${first}, ${oneOf(sometimes(0.3) ? [workshopTalk(oneOf)] : medium)}`;
}

const { yes, no, ready, notYet, understood } = english.replies;
for (const wording of [...yes, ...no, ...ready, ...notYet, ...understood]) keep('reply', 2, wording);
for (const wording of stops) keep('stop', 2, wording);
for (const wording of [...wordings, ...controls].filter(soundsLikeStop)) keep('near', 2, wording);
for (const wording of controls) keep('control', 2, wording);
for (const digit of anyDigits) keep('digits', 2, digit);
for (const number of teensAndTens) keep('number', 2, number);
for (const wording of wordings) keep('reply', 1, wording);
for (const text of nearStop) keep('near', 1, text);
for (const unit of units) keep('reply', 1, unit);
for (const number of upToAHundred) keep('number', 1, number);
many('number', 6500, withUnit);
many('number', 3500, numbers.asAsked);
many('digits', 7000, numbers.digitRun);
many('reply', 1800, () => Array.from({ length: wholeBetween(2, 3) }, () => oneOf(wordings)).join(', '));
many('control', 250, () => `${oneOf(controls)}, ${oneOf(sometimes(0.5) ? controls : wordings)}`);
many('stop', 700, withStop);
many('carrier', 7000, oursInTalk);
many('near', 2500, nearInTalk);
for (const line of prompts) {
  const count = line.split(' ').length;
  if (count > 1) keep(count > 14 ? 'long' : 'talk', 0, line);
}
many('talk', 7000, () => workshopTalk(oneOf));
many('talk', 9000, () => oneOf(short));
many('words', 2200, () =>
  Array.from({ length: wholeBetween(1, 6) }, () =>
    oneOf(sometimes(0.6) ? everyday.commonWords : everyday.words),
  ).join(' '),
);
many('long', 5000, longSentence);

mkdirSync(folder, { recursive: true });
texts.write(`${folder}/texts.jsonl`);
writeFileSync(`${folder}/dictionary.json`, JSON.stringify(Object.fromEntries(words)));
console.log(
  `${texts.size} texts of ${words.size} words, from ${everyday.sentences.length} sentences and ${wordings.length} wordings.`,
);
