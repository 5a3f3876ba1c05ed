import { g722, padded, type Recording } from './human-recordings.ts';

/** One woman from Québec (Debian asterisk-core-sounds-fr-g722). */
const folder = '/usr/share/asterisk/sounds/fr_CA_f_June';

const words: Readonly<Record<string, string>> = {
  '0': 'zéro',
  '1': 'un',
  '2': 'deux',
  '3': 'trois',
  '4': 'quatre',
  '5': 'cinq',
  '6': 'six',
  '7': 'sept',
  '8': 'huit',
  '9': 'neuf',
  '10': 'dix',
  '11': 'onze',
  '12': 'douze',
  '13': 'treize',
  '14': 'quatorze',
  '15': 'quinze',
  '16': 'seize',
  '17': 'dix sept',
  '18': 'dix huit',
  '19': 'dix neuf',
  '20': 'vingt',
  '30': 'trente',
  '40': 'quarante',
  '50': 'cinquante',
  '60': 'soixante',
  '70': 'soixante dix',
  '80': 'quatre vingt',
  '90': 'quatre vingt dix',
  et: 'et',
  hundred: 'cent',
  minus: 'moins',
};

/** A number put together from its separately recorded words. */
export const frenchNumber = (...names: readonly string[]): Recording => ({
  name: names.join(' '),
  text: names.map(name => words[name] ?? '').join(' '),
  sound: padded(names.map(name => g722(`digits/${name}`, folder))),
});

/** Every number that is recorded in one piece: 0 to 19 and the tens. */
export const singleFrenchNumbers = Object.keys(words).filter(name => /^\d+$/.test(name));
