import { MESSAGES, staleAfterS } from './messages.ts';
import { PARAMETERS } from './parameters.ts';
import type { BusReading } from './ports.ts';

/** The last reading of a parameter, or why there is none to act on. */
export type LatestReading =
  | BusReading
  /** Last heard this long ago: too long to stand for now. */
  | { readonly kind: 'stale'; readonly spn: number; readonly ageS: number }
  | { readonly kind: 'neverHeard'; readonly spn: number };

const repeatByPgn = new Map(MESSAGES.map(({ pgn, repeatS }) => [pgn, repeatS]));
/** By parameter: seconds after which a reading is stale; not listed: sent on request, so it keeps. */
const limitS = new Map<number, number>();
for (const { spn, pgn } of PARAMETERS) {
  const repeatS = repeatByPgn.get(pgn);
  if (repeatS !== undefined) limitS.set(spn, staleAfterS(repeatS));
}

/** Keeps the last reading of each parameter from each sender. */
export function createReadingBook() {
  const latest = new Map<number, Map<number, BusReading>>();

  function bySource(spn: number, source: number | undefined): BusReading | undefined {
    const senders = latest.get(spn);
    if (senders === undefined) return undefined;
    return senders.get(source ?? Math.min(...senders.keys()));
  }

  function read(spn: number, nowS: number, source?: number): LatestReading {
    const reading = bySource(spn, source);
    if (reading === undefined) return { kind: 'neverHeard', spn };
    const ageS = nowS - reading.timeS;
    const limit = limitS.get(spn);
    // Written so that a time that is no number makes it stale.
    return limit === undefined || ageS <= limit ? reading : { kind: 'stale', spn, ageS };
  }

  return {
    note(reading: BusReading): void {
      const senders = latest.get(reading.spn);
      if (senders) senders.set(reading.source, reading);
      else latest.set(reading.spn, new Map([[reading.source, reading]]));
    },
    /** The last reading as of now, in the frames' time; of several senders the lowest address, the engine's. */
    read,
    /** The first of these parameters that has a fresh value, else what is known of the first. */
    readFirst(spns: readonly [number, ...number[]], nowS: number): LatestReading {
      for (const spn of spns) {
        const reading = read(spn, nowS);
        if (reading.kind === 'value') return reading;
      }
      return read(spns[0], nowS);
    },
  };
}
