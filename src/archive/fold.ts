/**
 * The form in which texts are compared: without case, accents, full-width forms or odd blanks.
 * Zero bytes, which a PostgreSQL text cannot hold, are replaced.
 */
export const fold = (text: string): string =>
  storable(text)
    .normalize('NFKD')
    .replace(/\p{Mn}+/gu, '')
    .toLowerCase()
    .replace(/\s+/gu, ' ')
    .trim();

/** A text that both databases can hold. */
export const storable = (text: string): string => text.replaceAll('\u0000', '\uFFFD');

/** A folded text as a pattern of LIKE that finds it anywhere; `!` is the escape character. */
export const anywhere = (text: string): string => `%${fold(text).replace(/[!%_]/g, '!$&')}%`;
