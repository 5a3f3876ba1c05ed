import type { Language } from '../../../prompts/types.ts';
import { valueName } from '../../interview/words.ts';
import { isPart, parts } from '../../profile/fields.ts';

/** What a value, or a part of one, is called; its path where nothing is known of it. */
export const fieldName = (path: string, language: Language): string =>
  isPart(path) ? parts[path].what : valueName(path, language);
