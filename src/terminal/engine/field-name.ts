import { english } from '../../../prompts/en/index.ts';
import { isPart, isValueField, parts } from '../../profile/fields.ts';

/** What a value, or a part of one, is called; its path where nothing is known of it. */
export function fieldName(path: string): string {
  if (isValueField(path)) return english.values[path];
  return isPart(path) ? parts[path].what : path;
}
