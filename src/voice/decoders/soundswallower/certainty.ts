/** A stretch of an utterance and what the engine took it for: times in seconds, certainty 0 to 1. */
export interface Stretch {
  readonly t: string;
  readonly b: number;
  readonly d: number;
  readonly p: number;
}

/** A word of the language: no silence, no noise, no null transition. */
const isWord = ({ t }: Stretch) => !/^[<[(+]/.test(t);

/** Sound from before the first speech frame that an utterance may begin with. */
const longestLeadS = 0.8;
/** An utterance ends after 0.26 s of silence: a gap longer than that, and than the engine errs, is talk it passed over. */
const longestGapS = 0.5;

/** Below this certainty a reply is asked for again. */
export const leastCertainty = 0.81;

/**
 * How sure the engine is of what it heard: the certainty of its least certain word, and 0 where it heard no word or took
 * other talk before, between or after the words for silence ("yes, stop, that is not right" heard as "yes").
 */
export function certaintyOf(stretches: readonly Stretch[]): number {
  const words = stretches.filter(isWord);
  const last = stretches.at(-1);
  if (words.length === 0 || last === undefined) return 0;
  let saidUntilS = longestLeadS - longestGapS;
  for (const { b, d } of [...words, { b: last.b + last.d, d: 0 }]) {
    if (!(b - saidUntilS <= longestGapS)) return 0;
    saidUntilS = b + d;
  }
  return Math.min(...words.map(({ p }) => p));
}
