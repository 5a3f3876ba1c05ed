import type { Progress } from './decoder.ts';

/**
 * Silence that ends figures which may go on: of 104 rows of four figures or more that 52 people said (training and
 * development split), the longest pause within was under 700 ms in all but one, and there 840 ms.
 */
const figures = 900;

/**
 * Silence that ends an utterance. Longer than the closure of a "t" or a "p" (about 0.1 s, from memory), but where it is
 * known that nothing of what was said is still to come; a number may go on after the gap between two digits, and what
 * means nothing yet is waited for.
 */
const silenceMs = { complete: 160, extensible: 260, unfinished: 460, figures } as const;
const settledMs = { complete: 60, extensible: 200, unfinished: 460, figures } as const;
const unsettledMs = { complete: 360, extensible: 360, unfinished: 460, figures } as const;

/** The silence that ends a reply which could go on, as shipped; people who pause more are given more. */
export const usualSilenceMs = silenceMs.extensible;

/** An utterance longer than this is cut off: nobody answers at such length. */
export const longestUtteranceMs = 8_000;

/** @param trailingSilenceMs the silence that ends a reply which could go on, for this person */
export const patienceFor =
  (trailingSilenceMs: number) =>
  ({ outlook, settled }: Pick<Progress, 'outlook' | 'settled'>): number => {
    const usual = settled === undefined ? silenceMs : settled ? settledMs : unsettledMs;
    return usual[outlook] + trailingSilenceMs - usualSilenceMs;
  };
