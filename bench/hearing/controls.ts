import { english } from '../../prompts/en/index.ts';

/** Whether a reply is one of the words that may be said at any time and that open no gate. */
export const isControl = (id: string): boolean => id in english.controls;
