import { mkdirSync, readFileSync } from 'node:fs';
import { linesOfGoodStart } from '../../audio-fixtures/good-start.ts';
import { french } from '../../prompts/fr/index.ts';
import { demoProfiles } from '../../src/profile/load.ts';
import { grammarOf } from '../../src/session/grammar.ts';
import { hearingOf } from '../../src/voice/languages/index.ts';
import { phrasesOf, spokenForms } from '../../src/voice/number-words/forms.ts';
import { frenchNumbers } from '../../src/voice/number-words/french.ts';
import { formsOf } from '../../src/voice/number-words/slot.ts';
import { normalizeWording } from '../../src/voice/wording.ts';
import { chanceOf } from '../chance.ts';
import { collection } from './collection.ts';
import { aroundFrenchWords, frenchTalk, nearFrenchStop } from './french-talk.ts';

/*
 * Writes what the mixed voices say in French, of the same kinds as texts.ts does in English: french-texts.ts FOLDER
 * SENTENCES [SEED]. SENTENCES: general French, lines that end in a tab and a sentence, below a heading.
 */
const [, , folder = '.cache/french', sentences = '', seed = '20261128'] = process.argv;
const chance = chanceOf(Number(seed));
const { random, oneOf, sometimes, wholeBetween } = chance;

// espeak-ng says any word; figures are spelled out before.
const texts = collection(said => !/\d/.test(said));
const { keep, many } = texts;

const found = new Map<string, ReturnType<typeof grammarOf>>();
for (const profile of demoProfiles) {
  await linesOfGoodStart(profile, ({ session }) => {
    for (const units of ['us', 'metric'] as const) {
      const grammar = grammarOf(session.moment, french, units, 'voice');
      found.set(JSON.stringify(grammar), grammar);
    }
  });
}
const slots = [...found.values()].flatMap(({ number }) => (number === undefined ? [] : [number]));
const asked = slots.map(slot => ({ slot, forms: formsOf(slot) }));
const units = [
  ...new Set([
    ...slots.flatMap(slot => slot.units),
    ...Object.values(french.units).flatMap(unit => unit.said),
  ]),
];
const leads = [...new Set(Object.values(french.quantities).flatMap(quantity => [...quantity.leads]))];
const replies = Object.values(french.replies).flat();
const controls = Object.values(french.controls).flat();
const stops = french.stopWordings;
const wordings = [...new Set([...replies, ...controls])];
const near = [...nearFrenchStop, ...hearingOf('fr').soundingLikeStop];
const quoted = /"((?:[^"\\]|\\.)*)"/g;
const prompts = [...JSON.stringify([french.lines, french.steps]).matchAll(quoted)]
  .flatMap(([line]) => String(JSON.parse(line)).split(/[.?!:;]/))
  .filter(line => !line.includes('{'));
const length = (sentence: string) => sentence.split(' ').length;
const everyday = readFileSync(sentences, 'utf8')
  .trim()
  .split('\n')
  .slice(1)
  .map(line => line.split('\t').at(-1) ?? '')
  .filter(sentence => !/[0-9A-Z]{2}|[0-9()/«»&]/.test(sentence) && length(sentence) <= 18);
const short = everyday.filter(sentence => length(sentence) <= 9);
const long = everyday.filter(sentence => length(sentence) > 9);
const words = [...new Set(everyday.flatMap(sentence => normalizeWording(sentence).split(' ')))].filter(
  word => word.length > 2,
);

const digits = frenchNumbers.digits.map(([digit]) => digit ?? '');
const said = (scaled: number, decimals: number, digitsOnly = sometimes(0.2)) =>
  oneOf(phrasesOf(oneOf(spokenForms({ scaled, decimals }, digitsOnly, frenchNumbers))));

function number(): string {
  const kind = random();
  if (kind < 0.25) return said(wholeBetween(0, 99), 0);
  if (kind < 0.37) return said(wholeBetween(60, 99), 0, false);
  if (kind < 0.5) return said(wholeBetween(100, 999), 0);
  if (kind < 0.64) return said(sometimes(0.6) ? wholeBetween(20, 99) * 50 : wholeBetween(1000, 4500), 0);
  if (kind < 0.8) return said(wholeBetween(0, 199), 1);
  if (kind < 0.85) return said(wholeBetween(0, 2500), 2);
  if (kind < 0.91) return said(-wholeBetween(1, 45), 0);
  return oneOf(phrasesOf(oneOf(oneOf(asked).forms)));
}

function withUnit(): string {
  const lead = sometimes(0.2) ? oneOf(leads) : '';
  return `${lead} ${number()} ${sometimes(0.6) ? oneOf(units) : ''}`;
}

function asAsked(): string {
  const { slot, forms } = oneOf(asked);
  const lead = slot.leads.length > 0 && (slot.leadNeeded || sometimes(0.4)) ? oneOf(slot.leads) : '';
  const unit = slot.units.length > 0 && sometimes(0.5) ? oneOf(slot.units) : '';
  return `${lead} ${oneOf(phrasesOf(oneOf(forms)))} ${unit}`;
}

const digit = () => (sometimes(0.08) ? 'virgule' : oneOf(digits));
const digitRun = () => Array.from({ length: wholeBetween(1, 7) }, digit).join(sometimes(0.15) ? ', ' : ' ');

const before =
  "non|attends|hé|attention|oh non|vite|de l'huile|au feu|de la fumée|ça fuit|s'il te plaît".split('|');
const after =
  "maintenant|s'il vous plaît|tout de suite|il y a de la fumée|ça fuit|vite|non non|ça chauffe".split('|');

function withStop(): string {
  const stop = oneOf(stops);
  const kind = random();
  if (kind < 0.2) return `${stop}, ${oneOf(stops)}`;
  if (kind < 0.3) return `stop, stop, ${stop}`;
  if (kind < 0.55) return `${oneOf(wordings)}, ${stop}`;
  if (kind < 0.7) return `${oneOf(before)}, ${stop}`;
  if (kind < 0.85) return `${stop}, ${oneOf(after)}`;
  return `${number()}, ${stop}`;
}

const oursInTalk = () =>
  aroundFrenchWords(
    oneOf,
    sometimes(0.55) ? oneOf(wordings) : `${number()} ${sometimes(0.7) ? oneOf(units) : ''}`,
  );

for (const id of ['yes', 'no', 'ready', 'notYet', 'understood'] as const) {
  for (const wording of french.replies[id]) keep('reply', 2, wording);
}
for (const wording of stops) keep('stop', 2, wording);
for (const wording of controls) keep('control', 2, wording);
for (const one of digits) keep('digits', 2, one);
for (let n = 10; n <= 100; n += 1) {
  for (const phrase of spokenForms({ scaled: n, decimals: 0 }, false, frenchNumbers).flatMap(phrasesOf)) {
    keep('number', 1, phrase);
  }
}
for (const wording of wordings) keep('reply', 1, wording);
for (const unit of [...units, ...leads]) keep('reply', 1, unit);
for (const text of near) keep('near', 1, text);
keep('reply', 1, french.words.second);
many('number', 5000, withUnit);
many('number', 2500, asAsked);
many('digits', 3000, digitRun);
many('reply', 1500, () => Array.from({ length: wholeBetween(2, 3) }, () => oneOf(wordings)).join(', '));
many('reply', 800, () => `${french.words.second}, ${oneOf(wordings)}`);
many('control', 250, () => `${oneOf(controls)}, ${oneOf(sometimes(0.5) ? controls : wordings)}`);
many('stop', 700, withStop);
many('carrier', 4500, oursInTalk);
many('near', 1500, () =>
  sometimes(0.5) ? `${oneOf(near)}, ${oneOf(wordings)}` : `${oneOf(short)}, ${oneOf(near)}`,
);
for (const line of prompts) {
  if (length(line) > 1) keep(length(line) > 14 ? 'long' : 'talk', 0, line);
}
many('talk', 4000, () => frenchTalk(oneOf));
for (const sentence of short) keep('talk', 0, sentence);
many('words', 2500, () => Array.from({ length: wholeBetween(1, 6) }, () => oneOf(words)).join(' '));
for (const sentence of long) keep('long', 0, sentence);

mkdirSync(folder, { recursive: true });
texts.write(`${folder}/texts.jsonl`);
console.log(`${texts.size} texts, from ${everyday.length} sentences and ${wordings.length} wordings.`);
