import type { BusNotice } from './ports.ts';

/** An engine controller that is awake sends every tenth of a second, so two seconds of nothing mean something. */
const SILENT_AFTER_S = 2;

/** Tells when the bus falls silent and when it is heard again, each once. Time is an argument. */
export function createBusWatch(startS: number, silentAfterS = SILENT_AFTER_S) {
  let heardS = startS;
  let silent = false;
  return {
    /** To be called for every frame. */
    heard(nowS: number): BusNotice | undefined {
      heardS = nowS;
      if (!silent) return undefined;
      silent = false;
      return { kind: 'heardAgain', sentence: 'The vehicle bus is heard again.' };
    },
    /** To be called now and then. */
    check(nowS: number): BusNotice | undefined {
      if (silent || nowS - heardS <= silentAfterS) return undefined;
      silent = true;
      return {
        kind: 'silent',
        sentence: `Nothing was heard on the vehicle bus for ${silentAfterS} s; check that the key is on, the plug is seated and the bit rate is right.`,
      };
    },
  };
}
