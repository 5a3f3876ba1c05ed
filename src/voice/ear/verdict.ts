import type { Verdict } from './decoder.ts';

/**
 * What a text comes to that is written down with a certainty, whatever it means.
 * @param certainty of the least certain word, 0 to 1; what is no number is no certainty
 */
export function verdictOf(text: string, certainty: number, leastCertainty: number): Verdict {
  if (text === '') return { kind: 'unclear', text, reason: 'nothingRecognized' };
  if (!(certainty >= leastCertainty)) return { kind: 'unclear', text, reason: 'lowConfidence' };
  return { kind: 'taken', text, certainty };
}

/** Whether somebody near was heard: who is far away may have been taken up in the middle of somebody's beginning. */
export const isOfSomebodyNear = (verdict: Verdict): boolean =>
  verdict.kind !== 'nothing' && !(verdict.kind === 'unclear' && verdict.reason === 'farAway');
