import type { CanFrame } from '../frame.ts';
import type { BusSource } from '../ports.ts';

/** Frames from the program itself: a rehearsal, a list. Whoever makes them sets the pace. */
export function framesFrom(
  description: string,
  frames: Iterable<CanFrame> | AsyncIterable<CanFrame>,
): BusSource {
  let closed = false;
  return {
    description,
    async run(onFrame) {
      for await (const frame of frames) {
        if (closed) break;
        await onFrame(frame);
      }
      return { kind: 'finished' };
    },
    close() {
      closed = true;
    },
  };
}
