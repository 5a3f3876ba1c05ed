import { voiceLanguage, voiceLanguages } from '../languages/index.ts';
import { comparable } from '../languages/spelling.ts';
import type { NumberSlot } from '../ports.ts';

/** What a line of figures is: a number of the slot, one outside its range or of something else, or nothing that counts. */
export type TypedNumber =
  | { readonly kind: 'number'; readonly value: number }
  | { readonly kind: 'outOfRange'; readonly value: number }
  | { readonly kind: 'otherKind' };

/** Finer than any gauge shows; more is a slip of the hand. */
const MOST_DECIMALS = 3;

/** "Minus" as any language says it: at the keys nobody asks which is meant. */
const MINUS = voiceLanguages.flatMap(({ numbers }) => numbers.minus).join('|');

/** A sign, digits in groups of three or not at all, decimals behind a point or a comma, then whatever is no figure. */
const line = new RegExp(
  String.raw`^(?<lead>[^\d.,+\-−–—<>~?]*?)\s*(?<sign>[-−+]|(?:${MINUS})\s)?(?<whole>\d{1,3}(?:[,' \u00A0\u202F]\d{3})+|\d*)(?:[.,](?<decimals>\d+))?\s*(?<unit>[^\d.,+\-−–—<>~?\s][^\d+\-−–—<>~?]*)?$`,
  'iu',
);

const beside = (text: string | undefined, language: NumberSlot['language']) =>
  comparable((text ?? '').replaceAll('°', ' '), voiceLanguage(language));

/**
 * Reads figures as people write them: "42", "42 psi", "41°F", "10,4", "10.4V", "1,000 ft". A comma before three digits
 * parts thousands where the slot reaches so far and its values have no decimals; elsewhere it parts decimals.
 * A unit of the same kind that is not asked for is converted.
 * @returns undefined for what is no number: two numbers, no unit at all, a range
 */
export function readTyped(text: string, slot: NumberSlot): TypedNumber | undefined {
  const groups = line.exec(text.trim())?.groups;
  if (!groups) return undefined;
  const { lead, sign, whole = '', decimals = '', unit } = groups;
  if (whole === '' && decimals === '') return undefined;
  const { language } = slot;
  const leads = slot.leads.map(each => beside(each, language));
  const units = [...slot.units, ...(slot.writtenUnits ?? [])].map(each => beside(each, language));
  const said = beside(lead, language);
  if (said === '' ? slot.leadNeeded : !leads.includes(said)) return undefined;
  const named = beside(unit, language);
  const isNamed = (wordings: readonly string[] = []) =>
    wordings.some(each => beside(each, language) === named);
  const isOwn = named === '' || units.includes(named);
  const other = isOwn ? undefined : slot.otherUnits?.find(({ wordings }) => isNamed(wordings));
  if (!isOwn && !other) return isNamed(slot.wrongUnits) ? { kind: 'otherKind' } : undefined;
  const figure = numberOf(whole, decimals, sign, slot);
  if (figure === undefined) return undefined;
  const value = other ? Number((figure * other.scale + other.offset).toFixed(9)) : figure;
  // What is counted has no unit, and comes whole.
  if (slot.units.length === 0 && !Number.isInteger(value)) return undefined;
  return value >= slot.min && value <= slot.max ? { kind: 'number', value } : { kind: 'outOfRange', value };
}

function numberOf(
  whole: string,
  decimals: string,
  sign: string | undefined,
  slot: NumberSlot,
): number | undefined {
  const minus = sign !== undefined && sign.trim() !== '+' ? -1 : 1;
  const digits = whole.replace(/\D/gu, '');
  if (decimals.length > MOST_DECIMALS || digits.length > 7) return undefined;
  // "1,000" reached this far as whole 1,000; a single group behind a comma is thousands only where they can be.
  const grouped = /^\d{1,3},\d{3}$/u.test(whole);
  const asThousands = !grouped || (slot.step >= 1 && slot.max >= 1000);
  if (!asThousands) return undefined;
  const value = minus * Number(`${digits === '' ? '0' : digits}.${decimals === '' ? '0' : decimals}`);
  return value === 0 ? 0 : value;
}
