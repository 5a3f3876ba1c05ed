import type { Moment } from '../../../src/voice/ear/moment.ts';
import { outputOf, phonesOf } from '../../../src/voice/phone-network/phones.ts';

/** What the network says of a moment in which one phone (or none) is heard without a doubt. */
export function certain(phone: string | undefined, doubt = 12): Float32Array {
  const likelihoods = new Float32Array(phonesOf.en.length + 1).fill(-doubt);
  const output = phone === undefined ? 0 : outputOf(phone);
  if (output === undefined) throw new RangeError(`${phone} is no phone`);
  likelihoods[output] = 0;
  return likelihoods;
}

/** Moments that spell words: each phone for a moment, and none before the same phone comes again. */
export function spelled(pronunciations: readonly string[], doubt?: number): readonly Float32Array[] {
  const moments: Float32Array[] = [];
  let last: string | undefined;
  for (const phone of pronunciations.join(' ').split(' ')) {
    if (phone === last) moments.push(certain(undefined, doubt));
    moments.push(certain(phone, doubt));
    last = phone;
  }
  return moments;
}

/** Moments in which these phones are heard, late and early alike, by somebody near. */
export const nearMoments = (all: readonly Float32Array[], near = 0.95): readonly Moment[] =>
  all.map(each => ({ phones: each, early: each, near }));
