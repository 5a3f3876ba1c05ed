import type { Decoder, Verdict } from '../../ear/decoder.ts';
import { certaintyOf, nearBounds as usualNearBounds } from './bounds.ts';
import {
  createNetworkDecoder,
  type Decision,
  type NetworkDecoderOptions,
  type PhoneGrammar,
} from './decoder.ts';

/**
 * What is surely a reply, rises clearly and is long enough, but came from somebody who is hardly near. In ten minutes of a
 * radio and babble alone (made voices of the development split) nothing is; with fewer phones a radio gives two in
 * five minutes. What lets count what was read back is left out: a radio says "yes" often enough.
 */
const leastCertainty = 0.9;
const leastPhones = 6;
const leastRiseDb = 6;

/** Whether nothing counted only because whoever spoke was hardly near. @param hardlyNear below it nobody is near */
export function isFar(
  { verdict, features, stands }: Pick<Decision, 'verdict' | 'features' | 'stands'>,
  hardlyNear: number,
): boolean {
  if (verdict.kind !== 'nothing' || features === undefined) return false;
  return (
    (stands === 'reply' || stands === 'oneWordNumber') &&
    features.near < hardlyNear &&
    features.riseDb >= leastRiseDb &&
    features.phones >= leastPhones &&
    certaintyOf(features) >= leastCertainty
  );
}

/** The network's decoder, which says besides that somebody was too far away to be taken. Throws as that does. */
export function createDecoderTellingFar(options: NetworkDecoderOptions): Decoder<PhoneGrammar> {
  const { nearBounds = usualNearBounds, onDecision = () => {} } = options;
  let decided: Decision | undefined;
  const decoder = createNetworkDecoder({
    ...options,
    onDecision(decision) {
      decided = decision;
      onDecision(decision);
    },
  });
  return {
    ...decoder,
    async end(): Promise<Verdict> {
      const verdict = await decoder.end();
      return decided !== undefined && isFar(decided, nearBounds.hardlyNear)
        ? { kind: 'unclear', text: decided.text ?? '', reason: 'farAway' }
        : verdict;
    },
  };
}
