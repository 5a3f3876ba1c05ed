import type { Gate } from '../../../machines/vocabulary.ts';

/** The gates before the starter turns any engine, listed by hand. */
export const anyCranking = [
  'stopWordsProved',
  'peopleSafe',
  'coolantReady',
  'oilReady',
  'sensorsConnected',
  'walkRoundDone',
  'turnsFreely',
] as const satisfies readonly Gate[];

/** Those before fuel burns, of an engine without heater, filter and raw water. */
export const firing = [
  ...anyCranking,
  'fuelReady',
  'fuelPrimed',
  'oilPrimed',
  'fuellingRestored',
  'batteryReady',
  'lampsRight',
  'noBlockingFault',
] as const satisfies readonly Gate[];
