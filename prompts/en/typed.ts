/** What may be typed in the interview of a new engine besides values; each language's words are taken in all of them. */
export const typedWords = {
  yes: ['yes', 'y'],
  no: ['no', 'n'],
  not: ['no', 'not', 'without', 'never'],
  and: ['and'],
  none: ['none'],
  to: ['to'],
  below: ['below', 'under'],
  above: ['above', 'from'],
  page: ['p', 'p.', 'page'],
  plate: ['plate'],
  manual: ['manual'],
  measured: ['measured'],
  seen: ['seen', 'panel'],
  assumed: ['assumed'],
  list: ['list'],
  quit: ['quit', 'exit'],
} as const;
