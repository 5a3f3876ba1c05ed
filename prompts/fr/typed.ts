/** What may be typed in the interview of a new engine besides values. */
export const typedWords = {
  yes: ['oui', 'o'],
  no: ['non', 'n'],
  not: ['non', 'pas', 'sans', 'jamais'],
  and: ['et'],
  none: ['aucun', 'aucune', 'sans'],
  to: ['à'],
  below: ['sous', 'en dessous de'],
  above: ['dès', 'au-dessus de'],
  page: ['p', 'p.', 'page'],
  plate: ['plaque'],
  manual: ['manuel'],
  measured: ['mesuré', 'mesurée'],
  seen: ['vu', 'vue', 'tableau'],
  assumed: ['supposé', 'supposée'],
  list: ['liste'],
  quit: ['quitter'],
} as const;
