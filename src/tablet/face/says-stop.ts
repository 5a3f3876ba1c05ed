import { languages } from '../../../prompts/index.ts';
import { meansStop } from '../../session/stop-words.ts';

/** Whether a text that was typed means stop in any language: such a text waits for nothing. */
export const saysStop = (text: string): boolean =>
  Object.values(languages).some(language => meansStop(text, language));
