import { writeFileSync } from 'node:fs';
import { english } from '../prompts/en/index.ts';
import { french } from '../prompts/fr/index.ts';
import { hearingOf, voiceLanguage } from '../src/voice/languages/index.ts';
import { phrasesOf, spokenForms } from '../src/voice/number-words/forms.ts';
import type { HeardLanguage } from '../src/voice/ports.ts';
import { spokenWordings, wordsOf } from '../src/voice/wording.ts';
import { wordPhones } from './dictionary.ts';
import { frenchPronunciations } from './french-words.ts';

/** Words of the trade that no wording has yet, so that a new one need not begin here. */
const englishTrade =
  'bad belt belts block bolt boost bottom brake broken calm cap clamp clear click closed cold cool cracked cut damp dead dirty ' +
  'done drain drip drips drop dropped empty exhaust fan fast filled fine fitting flat flow fluid foam fumes gap gasket ' +
  'gauge glow hammer heater heavy high hiss hose hot intake key knock lights line loaded loose low manifold marked ' +
  'missing moving near noise noisy normal okay open pan pipe plug port power primed pulled pump pushed quiet quick ' +
  'radiator rail rattle red return rising rough rubbing safe seal sealed sealing seat second secure set shaft shaking ' +
  'side slow smell smooth smoking sound spin start started starter steady steam straight sure switch tank temperature ' +
  'throttle tight top torque turbo turning under valve vent vibration warm warming washer water wet white';

const frenchTrade =
  'abîmé air amorcé arrière avant bas bloqué bon bouchon boulon bruit brûlé carburant chaud clair clé collier commande ' +
  'coude coupé courroie culasse câble démarreur devant débranché durite eau encore essence faible fendu fermé ferme filtre ' +
  'fini fixe fort froid fuit fumée gauche goutte gouttes gaz grincement haut injecteur jauge joint liquide lent libre ' +
  'lourd marche masse mauvais moteur mousse neuf normal odeur ouvert perte plein pompe propre prise purgé radiateur ' +
  'rapide rempli retour rien rouge sale sec serrer sûr support suinte surface tendu tiède tirer tourne tuyau turbo usé ' +
  'vanne ventilateur vérifié vibration vide vis voyant';

const values = [
  0, 1, 2, 3, 4, 5, 6, 7, 8, 9, 10, 11, 12, 13, 14, 15, 16, 17, 18, 19, 20, 31, 42, 53, 64, 75,
].concat([86, 97, 100, 205, 1300, 2008]);
const phrasesFor = (language: HeardLanguage, numbers: readonly number[]) =>
  numbers
    .flatMap(scaled => [
      { scaled, decimals: 0 },
      { scaled: -scaled, decimals: 1 },
    ])
    .flatMap(value => spokenForms(value, false, voiceLanguage(language).numbers))
    .flatMap(phrasesOf);

/** Whatever may be said, and what sounds like a stop. */
const textsOf = (
  code: HeardLanguage,
  language: typeof english | typeof french,
  trade: string,
  numbers: readonly number[],
) => [
  ...Object.values(language.replies).flat(),
  ...Object.values(language.controls).flat(),
  ...language.affirmatives,
  ...language.stopWordings,
  ...Object.values(language.quantities).flatMap(({ leads }) => leads),
  ...Object.values(language.units).flatMap(({ said }) => said),
  language.words.second,
  ...phrasesFor(code, numbers),
  ...hearingOf(code).soundingLikeStop,
  ...trade.split(' '),
];

interface Dictionary {
  readonly name: string;
  /** From here. */
  readonly file: string;
  readonly adjective: string;
  readonly source: string;
  readonly words: readonly string[];
  readonly phones: (word: string) => readonly string[] | undefined;
}

function write({ name, file, adjective, source, words, phones }: Dictionary): void {
  const unknown = words.filter(word => phones(word) === undefined);
  if (unknown.length > 0) {
    console.error(
      `Nobody knows how to pronounce ${unknown.join(', ')}: see acoustic-model/write-pronunciations.ts.`,
    );
    process.exit(1);
  }
  writeFileSync(
    new URL(file, import.meta.url),
    `/**
 * ${source}
 */
const lines = \`
${words.map(word => `${word}: ${(phones(word) ?? []).join(' | ')}`).join('\n')}
\`;

const pronunciations: ReadonlyMap<string, readonly string[]> = new Map(
  lines
    .trim()
    .split('\\n')
    .map(line => line.split(': '))
    .map(([word = '', phones = '']) => [word, phones.split(' | ')]),
);

/** All pronunciations of ${adjective} word that may be said; none for any other. */
export const pronounce${name[0]?.toUpperCase()}${name.slice(1)} = (word: string): readonly string[] => pronunciations.get(word) ?? [];
`,
  );
  console.log(`${words.length} ${name} words written.`);
}

write({
  name: 'english',
  file: '../src/voice/languages/pronunciations/english.ts',
  adjective: 'an English',
  source: `How each word that may be said is pronounced, in the phones of the CMU Pronouncing Dictionary: from that dictionary
 * (see NOTICE), and from \`english-additions.ts\`. Written by \`npm run pronunciations\`: not to be changed by hand.`,
  words: wordsOf(textsOf('en', english, englishTrade, values)).toSorted(),
  phones: wordPhones,
});

/** Every number to a hundred, since a French number changes with what follows, and some with their units. */
const frenchTexts = spokenWordings(
  textsOf('fr', french, frenchTrade, [...values, ...Array.from({ length: 101 }, (_, n) => n)]),
);
const units = spokenWordings(Object.values(french.units).flatMap(({ said }) => said));
const spokenFrench = frenchPronunciations([
  ...frenchTexts,
  ...phrasesFor('fr', [1, 2, 3, 5, 6, 8, 10, 20, 80, 100]).flatMap(number =>
    units.map(unit => `${number} ${unit}`),
  ),
  ...spokenWordings(Object.values(french.replies).flat()).map(wording => `${french.words.second} ${wording}`),
]);
write({
  name: 'french',
  file: '../src/voice/languages/pronunciations/french.ts',
  adjective: 'a French',
  source: `How each word that may be said is pronounced, alone and before others, in the phones of
 * \`src/voice/phone-network/phones.ts\`: by espeak-ng, and by the rules of \`acoustic-model/french-words.ts\`. Written by
 * \`npm run pronunciations\`: not to be changed by hand.`,
  words: wordsOf(frenchTexts).toSorted(),
  phones: word => spokenFrench.get(word),
});
