import { english } from '../../../prompts/en/index.ts';
import type { Grammar } from '../../../src/voice/ports.ts';
import { grammarAt } from '../material.ts';
import type { Saying } from '../scene.ts';
import { type SaidClip, saidTo } from './clip-scenes.ts';
import type { Clip } from './recordings.ts';

const controls = Object.entries(english.controls).map(([id, wordings]) => ({ id, wordings }));

/** A gauge that shows one figure. */
export const digitGrammar: Grammar = {
  key: 'people.digit',
  stop: english.stopWordings,
  replies: controls,
  number: { id: 'digit', leads: [], units: [], min: 0, max: 9, step: 1 },
};

/** Any number of a gauge. */
const numberGrammar: Grammar = {
  ...digitGrammar,
  key: 'people.number',
  number: { id: 'number', leads: [], units: [], min: 0, max: 9_999, step: 1 },
};

/** Figures one after the other, as of a code. */
const codeGrammar: Grammar = {
  ...digitGrammar,
  key: 'people.code',
  number: { id: 'code', leads: [], units: [], min: 0, max: 9_999_999, step: 1, digitsOnly: true },
};

/** What the tool reads back is said to be right or wrong. */
const yesNoGrammar: Grammar = {
  key: 'people.readBack',
  stop: english.stopWordings,
  replies: [
    { id: 'yes', wordings: english.replies.yes },
    { id: 'no', wordings: english.replies.no },
    ...controls,
  ],
  agreement: 'yes',
};

/** So many of one speaker, that a few who said much do not decide. */
function atMostOfEach(clips: readonly Clip[], most: number): readonly Clip[] {
  const counts = new Map<string, number>();
  return clips.filter(({ speaker }) => {
    const count = (counts.get(speaker) ?? 0) + 1;
    counts.set(speaker, count);
    return count <= most;
  });
}

const digits = new Set('zero one two three four five six seven eight nine'.split(' '));
const present = <T>(values: readonly (T | undefined)[]) => values.filter(value => value !== undefined);

/** Words that say stop: nothing with one of them in it may be counted as talk that is no stop. */
const saysStop = /\b(stop\w*|shut|kill\w*)\b/;

/** What people say, sorted by what it tells. */
export interface PeopleMaterial {
  readonly digits: readonly SaidClip[];
  /** Number words above nine and figures in a row. */
  readonly numbers: readonly SaidClip[];
  /** Other words that a state takes. */
  readonly words: readonly SaidClip[];
  /** Single words that no state takes, to states that wait for a figure or a yes. */
  readonly otherWords: readonly SaidClip[];
  readonly stops: readonly Clip[];
  /** Sentences, to the states of the procedure by turns. */
  readonly talk: readonly SaidClip[];
}

const mostOfSpeaker = 10;

/** @param clips of one split */
export function materialOf(clips: readonly Clip[], replies: readonly Saying[]): PeopleMaterial {
  // Whose speaker nobody knows may be a speaker of another split.
  const known = clips.filter(({ kind, speaker, text }) => kind === 'speech' && speaker !== '' && text !== '');
  const takes = (grammars: readonly Grammar[]) => (clip: Clip) =>
    present(grammars.map(grammar => saidTo(clip, grammar)))[0];
  const stops = atMostOfEach(
    known.filter(({ text }) => (english.stopWordings as readonly string[]).includes(text)),
    mostOfSpeaker,
  );
  const single = known.filter(({ text }) => digits.has(text));
  const numbers = present(
    known.filter(({ text }) => !digits.has(text)).map(takes([numberGrammar, codeGrammar])),
  );
  const grammars = [yesNoGrammar, ...replies.map(({ grammar }) => grammar)];
  const other = known.filter(({ text }) => !digits.has(text) && !saysStop.test(text));
  const words = present(
    atMostOfEach(other, mostOfSpeaker).map(clip => {
      const said = takes(grammars)(clip);
      return said?.means?.kind === 'reply' ? said : undefined;
    }),
  );
  const taken = new Set([...words, ...numbers].map(({ clip }) => clip));
  const takenTexts = new Set([...taken].map(({ text }) => text));
  const otherWords = atMostOfEach(
    other.filter(({ text }) => !text.includes(' ') && !takenTexts.has(text)),
    2,
  );
  const talk = clips.filter(
    ({ kind, text, lengthSamples }) =>
      kind === 'talk' || (kind === 'speech' && text.split(' ').length >= 4 && lengthSamples > 16_000),
  );
  return {
    digits: present(atMostOfEach(single, mostOfSpeaker).map(clip => saidTo(clip, digitGrammar))),
    numbers: numbers.filter(({ means }) => means?.kind === 'number'),
    words,
    otherWords: otherWords.map((clip, i) => ({
      clip,
      grammar: i % 2 === 0 ? digitGrammar : yesNoGrammar,
      means: undefined,
    })),
    stops,
    talk: talk
      .filter(({ text }) => !takenTexts.has(text) && !saysStop.test(text))
      .map((clip, i) => ({ clip, grammar: grammarAt(replies, i * 7), means: undefined })),
  };
}
