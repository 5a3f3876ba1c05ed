import type { Intake } from './intake.ts';
import { hashAtLine } from './packed-log.ts';

/** A version of a record that is in the archive, or about to be. */
export interface Version extends Pick<Intake, 'state' | 'chain' | 'head' | 'entries'> {
  readonly id: string;
}

export type Decision =
  | { readonly kind: 'new'; readonly id: string; readonly remark: string }
  /** In place of shorter versions of the same record. */
  | {
      readonly kind: 'longer';
      readonly id: string;
      readonly instead: readonly string[];
      readonly remark: string;
    }
  /** The archive has it already, or a longer version of it. */
  | { readonly kind: 'known'; readonly id: string };

/**
 * What to do with a record, given what the archive holds of the same chain.
 *
 * A record that was altered is always kept beside the others and never takes the place of any. Of those
 * that are sound (or only torn at the end), one that goes on where another stops takes its place; two that
 * go on differently from a common beginning are both kept, with a remark.
 * @param held versions with the same first hash
 * @param packedOf the file of a held version
 */
export async function decide(
  incoming: Intake,
  held: readonly Version[],
  packedOf: (id: string) => Promise<Uint8Array>,
): Promise<Decision> {
  const { state, chain, digest, head, entries, packed } = incoming;
  if (held.some(({ id }) => id === digest)) return { kind: 'known', id: digest };
  if (state === 'broken') return { kind: 'new', id: digest, remark: '' };

  const kin = held.filter(version => version.state !== 'broken');
  const shorter: Version[] = [];
  for (const version of kin) {
    if (version.entries === entries && version.head === head) {
      // Equal but for a torn line behind one of them, which is kept.
      if (version.state === 'torn' || state === 'sound') return { kind: 'known', id: version.id };
      shorter.push(version);
    } else if (version.entries <= entries) {
      if (hashAtLine(packed, version.entries) === version.head) shorter.push(version);
    } else if (hashAtLine(await packedOf(version.id), entries) === head) {
      return { kind: 'known', id: version.id };
    }
  }

  const others = kin.filter(version => !shorter.includes(version));
  const [other] = others;
  const remark = other
    ? `Begins like ${other.id.slice(0, SHOWN_DIGITS)} and goes on differently: the record was continued in two places.`
    : '';
  const takesOver = shorter.find(({ id }) => id === chain);
  const id = takesOver || kin.length === 0 ? chain : (shorter[0]?.id ?? digest);
  return shorter.length === 0
    ? { kind: 'new', id, remark }
    : { kind: 'longer', id, instead: shorter.map(version => version.id), remark };
}

/** Digits of an id that are shown: enough to tell a shop's sessions apart. */
export const SHOWN_DIGITS = 12;
