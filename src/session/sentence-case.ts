/** Each sentence with a capital, as it is written; what is put into a prompt begins small. */
export const sentenceCase = (text: string): string =>
  text.replace(/(^|[.?!] +)([¿¡]?)(\p{Ll})/gu, (_, before: string, mark: string, letter: string) =>
    [before, mark, letter.toUpperCase()].join(''),
  );
