import { bySentence } from '../../../prompts/by-sentence.ts';
import { originText, valueName } from '../../interview/words.ts';
import { valueFields } from '../../profile/fields.ts';
import type { Profile } from '../../profile/schema.ts';
import { type Reader, valueAt, valueText } from './value-text.ts';

/** What differs between two profiles, a line for each value, with where each side has it from. */
export function compareLines(one: Profile, other: Profile, reader: Reader): string[] {
  const { language } = reader;
  const tell = (sentence: string) => bySentence(sentence, language.bySentence);
  const from = (profile: Profile, path: (typeof valueFields)[number]) => {
    const origin = profile.provenance[path];
    return origin === undefined ? '' : ` [${originText(origin, language)}]`;
  };
  const lines = valueFields.flatMap(path => {
    const [left, right] = [valueAt(one, path), valueAt(other, path)];
    if (JSON.stringify(left) === JSON.stringify(right)) return [];
    return [
      `${valueName(path, language)}: ${valueText(one, path, reader)}${from(one, path)} | ${valueText(other, path, reader)}${from(other, path)}`,
    ];
  });
  return lines.length === 0 ? [tell('All values are the same.')] : lines;
}
