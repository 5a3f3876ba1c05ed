/** What is shown beside the sentence that the record is in memory only. */
export const HOW_TO_SAVE =
  'To save the record now, type: save to, and a folder or file on another disk. Else it is saved elsewhere at the end.';

/** The place in a typed line `save to PLACE`; undefined for any other line. */
export const savePlace = (line: string): string | undefined => /^save to\s+(\S.*)$/i.exec(line.trim())?.[1];
