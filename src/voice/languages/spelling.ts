import { normalizeWording } from '../wording.ts';
import type { VoiceLanguage } from './language.ts';

/** Without what a hurried hand leaves out at the keys: accents and joined letters. */
const plain = (text: string): string =>
  text.normalize('NFD').replace(/\p{M}/gu, '').replaceAll('œ', 'oe').replaceAll('æ', 'ae');

/**
 * A text as wordings are compared: normalized, without accents, and each word spelled as the one that
 * sounds like it and is listened for. What the ear can't tell apart is the same at the keys too.
 */
export function comparable(text: string, { homophones }: Pick<VoiceLanguage, 'homophones'>): string {
  return plain(normalizeWording(text))
    .split(' ')
    .map(word => homophones[word] ?? word)
    .join(' ');
}
