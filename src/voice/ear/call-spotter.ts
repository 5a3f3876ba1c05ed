import type { Pronounce } from '../phone-network/phone-graph.ts';
import { createStopSpotter, type StopSpotter } from './stop-spotter.ts';

/**
 * Likelihood that a call for help needs in either outputs, as a stop wording does (`leastStopPerPhone`): more, because a
 * false one has the fire service called. Of "fire" in 12 minutes of talk and 5 of babble (made voices of the development
 * split) -0.8 takes 4, this takes 1; of 18 that six made voices call out at 20, 10 and 0 dB beside an engine it hears 12 in
 * place of 13, of "smoke or fire" 15 and of "someone is hurt" 9 with either. In five minutes of a radio neither takes any.
 */
const leastPerPhone = -0.6;

/** Listens for calls for help, at any moment. @param pronounce pronunciations in the phones of the network */
export const createCallSpotter = (pronounce: Pronounce): StopSpotter =>
  createStopSpotter(pronounce, { leastEarlyPerPhone: leastPerPhone, leastPerPhone });
