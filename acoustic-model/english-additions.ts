/**
 * Pronunciations (in the phones of the CMU dictionary) of words that the model's dictionary lacks
 * or has in one accent only. A word may have several.
 */
export const englishPronunciations: Readonly<Record<string, readonly string[]>> = {
  psi: ['P IY EH S AY'],
  niner: ['N AY N ER'],
  biodiesel: ['B AY OW D IY Z AH L', 'B AY OW D IY S AH L'],
  kilopascals: ['K IH L OW P AE S K AE L Z', 'K IH L AH P AE S K AH L Z'],
  overspeed: ['OW V ER S P IY D'],
  torqued: ['T AO R K T'],
  kpa: ['K EY P IY EY'],
  // The first vowel is as good as gone, or full, in many mouths; the dictionary has only K ER EH K T.
  correct: ['K ER EH K T', 'K AH R EH K T', 'K AO R EH K T', 'K R EH K T'],
  // Rounded vowel, as in much of Britain and Ireland; the dictionary has only S T AA P.
  stop: ['S T AA P', 'S T AO P'],
};
