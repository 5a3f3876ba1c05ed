/**
 * One place in a spoken form: the words that may stand there. The empty word means that the place
 * may be left out.
 */
export type Token = readonly string[];

/** One way to say a number: its places in order. */
export type Form = readonly Token[];

/** A token for a word that has no alternative. */
export const word = (text: string): Token => [text];

/** The words of a form as the tool says them: the first of each place. */
export const firstWords = (form: Form): string =>
  form
    .map(token => token[0] ?? '')
    .filter(said => said !== '')
    .join(' ');
