import { phrasesOf, spokenForms } from '../src/voice/number-words/forms.ts';
import { numberOf, valuesOf } from '../src/voice/number-words/slot.ts';
import type { Grammar, NumberSlot } from '../src/voice/ports.ts';

type Replies = Readonly<Record<string, readonly string[]>>;

const stop = ['stop', 'stop stop', 'stop the engine', 'emergency stop', 'shut it down', 'kill it'];
const always: Replies = {
  hold: ['hold', 'wait'],
  goOn: ['continue', 'go on'],
  sayAgain: ['say again', 'repeat'],
  goBack: ['go back'],
  skip: ['skip'],
  status: ['status'],
  timeLeft: ['time left', 'how long'],
  help: ['help', 'what can I say'],
};

const grammar = (key: string, replies: Replies, number?: NumberSlot): Grammar => ({
  key,
  stop,
  replies: Object.entries({ ...replies, ...always }).map(([id, wordings]) => ({ id, wordings })),
  ...(number === undefined ? {} : { number }),
});

const slot = (
  id: string,
  [min, max, step]: readonly [number, number, number],
  leads: readonly string[],
  units: readonly string[],
): NumberSlot => ({ id, leads, units, min, max, step });

/** Moments like those of a start-up, for measuring before there is one, or beside it. */
export const representativeGrammars: readonly Grammar[] = [
  grammar('coolant', { yes: ['coolant full', 'full'], no: ['not full', 'coolant low'] }),
  grammar('pressure', { yes: ['pressure good'], no: ['no pressure', 'pressure low'] }),
  grammar('bubbles', { yes: ['no bubbles'], no: ['still bubbles'] }),
  grammar('primer', { yes: ['screwed home'], no: ['not yet'] }),
  grammar('lamp', { out: ['lamp out'], on: ['lamp on', 'still on'] }),
  grammar('readBack', { yes: ['yes', 'correct', 'that is right'], no: ['no', 'wrong', 'negative'] }),
  grammar('oil', {}, slot('oil', [0, 120, 1], ['oil pressure', 'pressure'], ['p s i'])),
  grammar('battery', {}, slot('battery', [8, 16, 0.1], ['battery'], ['volts'])),
  grammar('idle', {}, slot('idle', [0, 3000, 10], ['idle'], ['rpm'])),
  grammar('coolantTemperature', {}, slot('coolant', [-40, 230, 1], ['temperature'], ['degrees'])),
];

const oilDigits: Grammar = grammar(
  'oilDigits',
  {},
  {
    ...slot('oil', [0, 120, 1], [], []),
    digitsOnly: true,
  },
);

export const digitsGrammar = oilDigits;

/** Numbers spread over a slot, each said in another of its ways; `zero` or `oh`, `and` or not, by turns. */
function numbersOf(number: NumberSlot, count: number): readonly string[] {
  const values = valuesOf(number);
  return Array.from({ length: Math.min(count, values.length) }, (_, i) => {
    // Steps by the golden ratio: spread out, and never the same last digit all the time.
    const value = values[Math.floor(((i * 0.618_034) % 1) * values.length)];
    if (value === undefined) throw new RangeError(`slot ${number.id} has no value`);
    const phrases = spokenForms(value, number.digitsOnly ?? false)
      .flatMap(phrasesOf)
      .filter(phrase => !/\b(niner|decimal|negative)\b/.test(phrase));
    const phrase = phrases[i % phrases.length] ?? String(numberOf(value));
    const lead = i % 3 === 1 ? `${number.leads[0] ?? ''} ` : '';
    return `${lead}${phrase}`.trim();
  });
}

/** What is said to one grammar when its hearing is measured: every wording but the stops, and numbers. */
export function sayingsOf({ replies, number }: Grammar, numbers = 12): readonly string[] {
  const wordings = replies.filter(({ id }) => !(id in always)).flatMap(reply => reply.wordings);
  return [...wordings, ...(number === undefined ? [] : numbersOf(number, numbers))];
}

/** The words that may be said at any moment: measured once, not for each grammar. */
export const alwaysSaid: readonly string[] = Object.values(always).flat();

/** Workshop talk that answers nothing. */
export const talk: readonly string[] = [
  'did you see the game last night',
  'pass me that wrench over there',
  'I think we need a bigger hammer',
  'what time is lunch',
  'my brother bought a new truck',
  'can you hear that noise',
  'maybe',
  'where did I put the flashlight',
  'I do not know',
  'it is leaking a little bit',
  'the radio is too loud',
  'tomorrow is Friday',
  'that hose looks loose',
  'turn the light on',
  'this bolt is stuck',
  'coffee',
  'let me check the manual',
  'almost',
  'I am not sure',
  'the filter is on the bench',
];

/** Stop wordings on their own and inside other talk. The stop is said last, so that its end is known. */
export const stopSayings: readonly string[] = [
  ...stop,
  'hey stop the engine',
  'oh no stop',
  'look out kill it',
  'turn it off shut it down',
  'coolant full stop',
  'forty two stop',
  'it is on fire stop',
  'I said emergency stop',
];

/** The same, with talk going on behind the stop wording. */
export const stopsInTheMiddle: readonly string[] = [
  'please stop it is leaking',
  'hey stop the engine now',
  'yes stop that is not right',
  'no shut it down quick',
  'Bob kill it kill it now',
];
