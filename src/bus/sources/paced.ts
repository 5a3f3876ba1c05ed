import type { BusSource } from '../ports.ts';

/** The part of a clock that is needed to keep a pace. */
interface Pace {
  nowMs(): number;
  sleep(durationMs: number, signal?: AbortSignal): Promise<void>;
}

/** A longer gap, or a step back, is a break in the log and no time that anybody has to wait for. */
const BREAK_MS = 60_000;

/** Gives the frames of a log at the pace at which they came. */
export function paced(source: BusSource, clock: Pace): BusSource {
  const closing = new AbortController();
  return {
    description: source.description,
    run(onFrame, onNotice) {
      let originMs = Number.NaN;
      return source.run(async frame => {
        const frameMs = frame.timeS * 1000;
        const early = originMs + frameMs - clock.nowMs();
        // Written so that the first frame, with nothing to go by, sets the origin too.
        if (!(Math.abs(early) <= BREAK_MS)) originMs = clock.nowMs() - frameMs;
        else if (early > 0) await clock.sleep(early, closing.signal);
        if (!closing.signal.aborted) await onFrame(frame);
      }, onNotice);
    },
    close() {
      closing.abort();
      source.close();
    },
  };
}
