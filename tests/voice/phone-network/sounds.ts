import type { Moment } from '../../../src/voice/phone-network/network.ts';
import { outputOf, phones } from '../../../src/voice/phone-network/phones.ts';

/** What the network says of a moment in which one phone (or none) is heard without a doubt. */
export function sureMoment(phone: string | undefined, doubt = 12): Moment {
  const likelihoods = new Float32Array(phones.length + 1).fill(-doubt);
  const output = phone === undefined ? 0 : outputOf(phone);
  if (output === undefined) throw new RangeError(`${phone} is no phone`);
  likelihoods[output] = 0;
  return { phones: likelihoods, near: phone === undefined ? 0.1 : 0.9 };
}

/** Moments that spell words: each phone for a moment, and none before the same phone comes again. */
export function spelled(pronunciations: readonly string[], doubt?: number): readonly Moment[] {
  const moments: Moment[] = [];
  let last: string | undefined;
  for (const phone of pronunciations.join(' ').split(' ')) {
    if (phone === last) moments.push(sureMoment(undefined, doubt));
    moments.push(sureMoment(phone, doubt));
    last = phone;
  }
  return moments;
}

/** The words of the English stop wordings, as the CMU Pronouncing Dictionary says them (soundswallower 0.6.3). */
export const sayings: Readonly<Record<string, readonly string[]>> = {
  down: ['D AW N'],
  emergency: ['IH M ER JH AH N S IY', 'IY M ER JH AH N S IY'],
  engine: ['EH N JH AH N', 'IH N JH AH N'],
  it: ['IH T'],
  kill: ['K IH L'],
  now: ['N AW'],
  shut: ['SH AH T'],
  stop: ['S T AA P'],
  the: ['DH AH', 'DH IY'],
};
