import { blank } from '../phone-network/phones.ts';

/** What a network hears in a moment of sound. */
export interface Moment {
  /**
   * Natural logarithm of the probability of no phone (index 0) and of each of `phones`, of the moment
   * `phonesLateMoments` before this one: the network has listened on for so long.
   */
  readonly phones: Float32Array;
  /** The same of this moment, by a part of the network that waits less: what a stop is listened for with. */
  readonly early: Float32Array;
  /** Probability that somebody near is speaking. */
  readonly near: number;
}

/** Listens to a stream at 16 kHz that comes in pieces of any length, and remembers what it heard. */
export interface HearingNetwork {
  /** Time of one moment. */
  readonly momentMs: number;
  readonly phonesLateMoments: number;
  /** The moments that end within the next piece. */
  next(samples: Float32Array): readonly Moment[];
}

/** Half of a moment's probability, as a logarithm. */
const half = Math.log(0.5);

/** Whether a phone is heard in the early outputs of a moment, rather than none. */
export const hasPhone = ({ early }: Pick<Moment, 'early'>): boolean => (early[blank] ?? 0) <= half;
