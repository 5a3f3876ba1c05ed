import { writeFileSync } from 'node:fs';
import { english } from '../prompts/en/index.ts';
import { voiceLanguage } from '../src/voice/languages/index.ts';
import { phrasesOf, spokenForms } from '../src/voice/number-words/forms.ts';
import { wordsOf } from '../src/voice/wording.ts';
import { wordPhones } from './dictionary.ts';

/** Words of the trade that no wording has yet, so that a new one need not begin here. */
const trade =
  'bad belt belts block bolt boost bottom brake broken calm cap clamp clear click closed cold cool cracked cut damp dead dirty ' +
  'done drain drip drips drop dropped empty exhaust fan fast filled fine fitting flat flow fluid foam fumes gap gasket ' +
  'gauge glow hammer heater heavy high hiss hose hot intake key knock lights line loaded loose low manifold marked ' +
  'missing moving near noise noisy normal okay open pan pipe plug port power primed pulled pump pushed quiet quick ' +
  'radiator rail rattle red return rising rough rubbing safe seal sealed sealing seat second secure set shaft shaking ' +
  'side slow smell smooth smoking sound spin start started starter steady steam straight sure switch tank temperature ' +
  'throttle tight top torque turbo turning under valve vent vibration warm warming washer water wet white';

const numbers = [0, 1, 2, 3, 4, 5, 6, 7, 8, 9, 10, 11, 12, 13, 14, 15, 16, 17, 18, 19, 20, 31, 42, 53, 64, 75]
  .concat([86, 97, 100, 205, 1300, 2008])
  .flatMap(scaled => [
    { scaled, decimals: 0 },
    { scaled: -scaled, decimals: 1 },
  ])
  .flatMap(value => spokenForms(value, false))
  .flatMap(phrasesOf);

const { hearing } = voiceLanguage('en');
const words = wordsOf([
  ...Object.values(english.replies).flat(),
  ...Object.values(english.controls).flat(),
  ...english.stopWordings,
  ...Object.values(english.quantities).flatMap(({ leads }) => leads),
  ...Object.values(english.units).flatMap(({ said }) => said),
  english.words.second,
  ...numbers,
  ...hearing.soundingLikeStop,
  trade,
]).toSorted();

const unknown = words.filter(word => wordPhones(word) === undefined);
if (unknown.length > 0) {
  console.error(
    `Nobody knows how to pronounce ${unknown.join(', ')}: add them to src/voice/languages/pronunciations/english-additions.ts.`,
  );
  process.exit(1);
}

const file = new URL('../src/voice/languages/pronunciations/english.ts', import.meta.url);
writeFileSync(
  file,
  `/**
 * How each word that may be said is pronounced, in the phones of the CMU Pronouncing Dictionary: from that dictionary
 * (see NOTICE), and from \`english-additions.ts\`. Written by \`npm run pronunciations\`: not to be changed by hand.
 */
const lines = \`
${words.map(word => `${word}: ${(wordPhones(word) ?? []).join(' | ')}`).join('\n')}
\`;

const pronunciations: ReadonlyMap<string, readonly string[]> = new Map(
  lines
    .trim()
    .split('\\n')
    .map(line => line.split(': '))
    .map(([word = '', phones = '']) => [word, phones.split(' | ')]),
);

/** All pronunciations of an English word that may be said; none for any other. */
export const pronounceEnglish = (word: string): readonly string[] => pronunciations.get(word) ?? [];
`,
);
console.log(`${words.length} words written.`);
