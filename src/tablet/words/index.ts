import { english, type Words } from './en.ts';

export type { Words } from './en.ts';

/** The words of the language that this page is set to. Read where they are shown, never kept: the setting may change. */
export const words: Words = english;
