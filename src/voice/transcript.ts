import type { Matcher } from './meaning.ts';
import type { Heard } from './ports.ts';

/** What a recognizer wrote down, and how sure it is of its least certain word (0 to 1). */
export interface Transcript {
  readonly text: string;
  readonly confidence: number;
}

/** The stop in a text, finished or not; nothing else is acted on before the speaker is through. */
export function stopIn(matcher: Matcher, text: string): Heard | undefined {
  const meaning = matcher.meaningOf(text);
  // What calls for help so far may go on otherwise.
  return meaning?.kind === 'stop' && meaning.calls === undefined ? { kind: 'stop', text } : undefined;
}

/** What a finished text means. What is not exactly a wording, or less certain than it must be, is unclear. */
export function heardAs(matcher: Matcher, { text, confidence }: Transcript, leastConfidence: number): Heard {
  const meaning = matcher.meaningOf(text);
  if (meaning?.kind === 'stop' && (meaning.calls === undefined || confidence >= leastConfidence))
    return { ...meaning, text };
  if (text === '') return { kind: 'unclear', text, reason: 'nothingRecognized' };
  if (!meaning) return { kind: 'unclear', text, reason: 'outOfGrammar' };
  if (meaning.kind === 'stop' || !(confidence >= leastConfidence))
    return { kind: 'unclear', text, reason: 'lowConfidence' };
  return { ...meaning, text, confidence };
}
