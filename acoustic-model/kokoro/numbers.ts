import { englishNumbers } from '../../src/voice/number-words/english.ts';
import { phrasesOf, spokenForms } from '../../src/voice/number-words/forms.ts';
import { formsOf } from '../../src/voice/number-words/slot.ts';
import type { Grammar } from '../../src/voice/ports.ts';
import type { Chance } from '../chance.ts';

type Slot = NonNullable<Grammar['number']>;

export const anyDigits = 'zero oh one two three four five six seven eight nine niner'.split(' ');
/** Five and nine are mistaken for each other most. */
const hardDigits = 'five nine niner five nine one four oh zero two eight three'.split(' ');
export const teensAndTens =
  'thirteen fourteen fifteen sixteen seventeen eighteen nineteen thirty forty fifty sixty seventy eighty ninety'.split(
    ' ',
  );
/** Of those that are mistaken for each other most, several in a row. */
const likeTens = 'fifty eighty sixty fifteen eighteen sixteen eight nineteen'.split(' ');

/** Zero to a hundred, in every form. */
export const upToAHundred: readonly string[] = Array.from({ length: 101 }, (_, n) =>
  spokenForms({ scaled: n, decimals: 0 }, false, englishNumbers).flatMap(phrasesOf),
).flat();

/** Numbers as they are said, most of all those that are easily misheard; `slots` are those of the procedure. */
export function spokenNumbers({ random, oneOf, sometimes, wholeBetween }: Chance, slots: readonly Slot[]) {
  const asked = slots.map(slot => ({ slot, forms: formsOf(slot) }));
  const said = (scaled: number, decimals: number, digitsOnly = sometimes(0.25)) =>
    oneOf(phrasesOf(oneOf(spokenForms({ scaled, decimals }, digitsOnly, englishNumbers))));

  function teenOrTen(): string {
    if (sometimes(0.3)) return oneOf(teensAndTens);
    if (sometimes(0.25)) return `${oneOf(likeTens)} ${oneOf(likeTens.slice(0, 5))} ${oneOf(anyDigits)}`;
    const minus = sometimes(0.2) ? 'minus' : '';
    const first = oneOf(sometimes(0.75) ? teensAndTens.slice(0, 7) : teensAndTens);
    return `${minus} ${first} ${oneOf(['', '', 'hundred', oneOf(anyDigits.slice(2))])}`;
  }

  function any(): string {
    const kind = random();
    if (kind < 0.2) return said(wholeBetween(0, 99), 0);
    if (kind < 0.32) return said(wholeBetween(100, 999), 0);
    if (kind < 0.45) return said(sometimes(0.6) ? wholeBetween(20, 99) * 50 : wholeBetween(1000, 4500), 0);
    if (kind < 0.6) return said(wholeBetween(0, 199), 1);
    if (kind < 0.66) return said(wholeBetween(0, 2500), 2);
    if (kind < 0.72) return said(-wholeBetween(1, 45), 0);
    if (kind < 0.94) return teenOrTen();
    return oneOf(phrasesOf(oneOf(oneOf(asked).forms)));
  }

  /** A number that a question of the procedure takes, with its lead or unit now and then. */
  function asAsked(): string {
    const { slot, forms } = oneOf(asked);
    const value = oneOf(phrasesOf(oneOf(forms)));
    const lead = slot.leads.length > 0 && (slot.leadNeeded || sometimes(0.4)) ? oneOf(slot.leads) : '';
    return `${lead} ${value} ${slot.units.length > 0 && sometimes(0.5) ? oneOf(slot.units) : ''}`;
  }

  const digit = () => (sometimes(0.08) ? 'point' : oneOf(sometimes(0.5) ? hardDigits : anyDigits));
  const digitRun = () => Array.from({ length: wholeBetween(1, 7) }, digit).join(sometimes(0.15) ? ', ' : ' ');

  return { any, asAsked, digitRun };
}
