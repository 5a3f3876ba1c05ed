import type { CanFrame } from '../bus/frame.ts';
import type { BusEnd, BusSource, OnFrame } from '../bus/ports.ts';

/** A bus whose frames are pushed in by the model of the engine. */
interface PushedSource extends BusSource {
  /** Delivers frames to whoever runs the source; before that, and after it was closed, nobody hears them. */
  push(frames: readonly CanFrame[]): Promise<void>;
}

export function createPushedSource(description: string): PushedSource {
  let deliver: OnFrame | undefined;
  let end: (end: BusEnd) => void = () => {};
  let closed = false;
  return {
    description,
    run(onFrame) {
      if (closed) return Promise.resolve({ kind: 'finished' });
      deliver = onFrame;
      return new Promise(resolve => {
        end = resolve;
      });
    },
    async push(frames) {
      for (const frame of frames) {
        // What takes frames without waiting must not cost a turn of the loop for each.
        const taken = deliver?.(frame);
        if (taken) await taken;
      }
    },
    close() {
      closed = true;
      deliver = undefined;
      end({ kind: 'finished' });
    },
  };
}
