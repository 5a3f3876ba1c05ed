import { english } from '../prompts/en/index.ts';
import { createMatcher } from '../src/voice/meaning.ts';
import type { Grammar } from '../src/voice/ports.ts';
import { createEmbeddedRecognizer } from '../src/voice/recognizers/embedded.ts';
import {
  connectedDigits,
  type Recording,
  readSentences,
  singleNumbers,
  spokenNumber,
  telephoneSentences,
} from '../tests/helpers/human-recordings.ts';
import { count, outcomeOf } from './voice.ts';
import { emptyTally, listenTo, type Tally, totalOf } from './voice-measure.ts';

const numbers: Grammar = {
  key: 'human',
  stop: english.stopWordings,
  replies: [{ id: 'yes', wordings: english.replies.yes }],
  number: { id: 'reading', leads: ['pressure'], units: ['p s i'], min: -30, max: 120, step: 1 },
};

const code: Grammar = {
  key: 'humanCode',
  stop: english.stopWordings,
  replies: [],
  number: { id: 'code', leads: [], units: [], min: 1, max: 524_286, step: 1, digitsOnly: true },
};

/** Numbers put together from the recorded words of one woman: tens and ones, hundreds, and below nought. */
export const compoundNumbers = (): readonly Recording[] => [
  ...['20', '30', '40', '50', '60', '70', '80', '90'].flatMap(tens =>
    ['1', '4', '5', '9'].map(ones => spokenNumber(tens, ones)),
  ),
  spokenNumber('1', 'hundred'),
  ...['5', '12', '30'].map(value => spokenNumber('minus', value)),
];

export interface HumanReport {
  readonly numbers: Tally;
  readonly digits: Tally;
  readonly otherTalk: Tally;
  readonly wrong: readonly string[];
}

/** How recordings of people are heard: numbers that are answers, and sentences that are none. */
export async function measureHumans(sentences = 40): Promise<HumanReport> {
  const ear = await createEmbeddedRecognizer();
  const wrong: string[] = [];
  const hear = async (grammar: Grammar, recordings: readonly Recording[]): Promise<Tally> => {
    const tally = emptyTally();
    ear.listen(grammar);
    for (const { name, text, sound } of recordings) {
      const heard = outcomeOf(await listenTo(ear, sound));
      const before = tally.right;
      count(tally, createMatcher(grammar).meaningOf(text), heard);
      if (tally.right === before) wrong.push(`${name} "${text}": ${heard?.kind} "${heard?.text ?? ''}"`);
    }
    return tally;
  };
  const report = {
    numbers: await hear(numbers, [...singleNumbers.map(name => spokenNumber(name)), ...compoundNumbers()]),
    digits: await hear(code, [connectedDigits()]),
    otherTalk: await hear(numbers, [...telephoneSentences(sentences), ...readSentences()]),
    wrong,
  };
  ear.close();
  return report;
}

/** Prints how recordings of people are heard. */
export async function benchHumans(): Promise<void> {
  const { numbers, digits, otherTalk, wrong } = await measureHumans();
  const line = (name: string, { right, unclear, wrong: taken, falseStop }: Tally, all: number) =>
    console.log(
      `  ${name.padEnd(44)} ${right} of ${all} right, ${unclear} unclear, ${taken} wrong, ${falseStop} stops`,
    );
  line('numbers (one woman, asterisk-core-sounds-en)', numbers, totalOf(numbers));
  line('connected digits (one man, TIDIGITS sample)', digits, totalOf(digits));
  line('other talk rejected', otherTalk, totalOf(otherTalk));
  for (const each of wrong) console.log(`    ${each}`);
}
