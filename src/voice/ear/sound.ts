import { speechRateHz } from '../resample.ts';
import type { Moment } from './moment.ts';

/** The ear goes through the stream in steps of 20 ms. */
export const stepMs = 20;
export const stepLength = (speechRateHz * stepMs) / 1000;

/** A step of the stream at 16 kHz. */
export interface Sound {
  /** As it came in. */
  readonly raw: Float32Array;
  /** As it is listened to: noise may be taken out, and it may be a little late. */
  readonly heard: Float32Array;
  /** What the network heard, where there is one: moments that end within this step. */
  readonly moments: readonly Moment[];
}
