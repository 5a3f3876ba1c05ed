import { bySentence } from '../../../prompts/by-sentence.ts';
import type { Language } from '../../../prompts/types.ts';
import { originText } from '../../interview/words.ts';
import { fields, valueFields } from '../../profile/fields.ts';
import type { Profile } from '../../profile/schema.ts';
import { valueAt, valueText } from './show.ts';

/** What differs between two profiles, a line for each value, with where each side has it from. */
export function compareLines(one: Profile, other: Profile, language: Language): string[] {
  const tell = (sentence: string) => bySentence(sentence, language.bySentence);
  const from = (profile: Profile, path: (typeof valueFields)[number]) => {
    const origin = profile.provenance[path];
    return origin === undefined ? '' : ` [${originText(origin, language)}]`;
  };
  const lines = valueFields.flatMap(path => {
    const [left, right] = [valueAt(one, path), valueAt(other, path)];
    if (JSON.stringify(left) === JSON.stringify(right)) return [];
    const { unit }: { readonly unit?: string } = fields[path];
    return [
      `${path}: ${valueText(left, language, unit)}${from(one, path)} | ${valueText(right, language, unit)}${from(other, path)}`,
    ];
  });
  return lines.length === 0 ? [tell('All values are the same.')] : lines;
}
