import { languageCodes } from '../../prompts/index.ts';
import { hearingOf, isHeard } from '../../src/voice/languages/index.ts';
import { nearestPairs, type Pair, wordingDistance } from './pairs.ts';
import { grammarsOf } from './states.ts';

/** Pairs that are further from one another than this are not printed. */
const WITHIN = 2;

/** Prints what may be said in one state, means something else, and sounds alike: `npm run confusions [en] [fr]`. */
function main(wanted: readonly string[]): void {
  for (const language of languageCodes
    .filter(isHeard)
    .filter(code => wanted.length === 0 || wanted.includes(code))) {
    const distance = wordingDistance(language, hearingOf(language).pronounce);
    const states = new Map<string, { pair: Pair; keys: string[] }>();
    for (const grammar of grammarsOf(language)) {
      for (const pair of nearestPairs(grammar, distance, WITHIN)) {
        const name = `${pair.one}|${pair.other}`;
        const known = states.get(name) ?? { pair, keys: [] };
        known.keys.push(grammar.key);
        states.set(name, known);
      }
    }
    const all = [...states.values()].sort((a, b) => a.pair.distance - b.pair.distance);
    for (const numbers of [false, true]) {
      console.log(`\n${language}, ${numbers ? 'words within numbers' : 'wordings'}: distance in phones`);
      for (const { pair, keys } of all.filter(each => each.pair.inNumbers === numbers)) {
        const more = keys.length > 3 ? ` and ${keys.length - 3} more` : '';
        console.log(
          `  ${pair.distance.toFixed(2)}  "${pair.one}" / "${pair.other}"   ${keys.slice(0, 3).join(', ')}${more}`,
        );
      }
    }
  }
}

main(process.argv.slice(2));
