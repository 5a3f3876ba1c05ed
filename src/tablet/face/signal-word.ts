/** The first word of a caution, as ANSI Z535.6 has them. */
export type Signal = 'danger' | 'warning' | 'caution' | 'notice';

const signals: readonly Signal[] = ['danger', 'warning', 'caution', 'notice'];

/** The signal word that a sentence begins with, if it does. */
export function signalOf(sentence: string): Signal | null {
  const [first = ''] = sentence.split(/[.!:]/, 1);
  return signals.find(signal => signal === first.trim().toLowerCase()) ?? null;
}
