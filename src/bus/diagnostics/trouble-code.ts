/** Which parameter a fault is about. */
type FaultSpn =
  | { readonly kind: 'known'; readonly spn: number }
  /** The old conversion bit is set and nobody said which old method the sender uses: it is one of these. */
  | { readonly kind: 'oneOf'; readonly candidates: readonly number[] };

/** One fault code of a message. */
export interface BusFault {
  readonly spn: FaultSpn;
  /** Failure mode, 0 to 31. */
  readonly fmi: number;
  /** How often it became active, 0 to 126; undefined when the sender does not count. */
  readonly occurrences: number | undefined;
}

/** The three old ways to pack the number, before version 4 made them one. */
export type OldConversion = 1 | 2 | 3;

const NOT_COUNTED = 127;

/**
 * Unpacks the four bytes of one code, SAE J1939-73 section 5.7.1.11 (from memory). With the conversion bit clear
 * the number is packed lowest byte first (method 4). With it set, method 1, 2 or 3 was used, which the bytes do
 * not tell: `oldConversion` says it when the sender is known, otherwise all three are given.
 * Undefined when the bytes say that there is no fault (all zero, or all ones as an older filler).
 */
export function parseTroubleCode(
  data: Uint8Array,
  at: number,
  oldConversion?: OldConversion,
): BusFault | undefined {
  const [first = 0xff, second = 0xff, third = 0xff, fourth = 0xff] = data.subarray(at, at + 4);
  const fmi = third & 0x1f;
  const top = third >>> 5;
  const count = fourth & 0x7f;
  const methods: Readonly<Record<OldConversion | 4, number>> = {
    1: (first << 11) | (second << 3) | top,
    2: (second << 11) | (first << 3) | top,
    3: (top << 16) | (second << 8) | first,
    4: (top << 16) | (second << 8) | first,
  };
  const occurrences = count === NOT_COUNTED ? undefined : count;
  if (methods[4] === 0 && fmi === 0) return undefined;
  if (first === 0xff && second === 0xff && third === 0xff) return undefined;
  const old = fourth >= 0x80;
  if (!old) return { spn: { kind: 'known', spn: methods[4] }, fmi, occurrences };
  if (oldConversion) return { spn: { kind: 'known', spn: methods[oldConversion] }, fmi, occurrences };
  const candidates = [...new Set([methods[1], methods[2], methods[3]])];
  return { spn: { kind: 'oneOf', candidates }, fmi, occurrences };
}

/** Packs a code by method 4, as every current sender does. */
export function formatTroubleCode(spn: number, fmi: number, occurrences: number | undefined): number[] {
  const whole = (value: number, max: number): boolean =>
    Number.isInteger(value) && value >= 0 && value <= max;
  if (!whole(spn, 0x7ffff) || !whole(fmi, 31) || !whole(occurrences ?? NOT_COUNTED, NOT_COUNTED))
    throw new RangeError(
      `SPN ${spn} FMI ${fmi} count ${occurrences} cannot be packed: SPN goes to 524287, FMI to 31, the count to 126.`,
    );
  return [spn & 0xff, (spn >>> 8) & 0xff, ((spn >>> 16) << 5) | fmi, occurrences ?? NOT_COUNTED];
}
