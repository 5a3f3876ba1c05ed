import type { BusSource } from '../ports.ts';

/** Long enough for a USB adapter to come back under its name. */
const TRY_AGAIN_AFTER_MS = 2000;

/**
 * Tries a source again whenever it is lost, until it finishes or is closed. Each loss is told once.
 * @param open makes the source anew
 * @param wait settles after so many milliseconds
 */
export function reconnecting(open: () => BusSource, wait: (ms: number) => Promise<void>): BusSource {
  let source = open();
  let closed = false;
  return {
    description: source.description,
    async run(onFrame, onNotice) {
      let lastReason = '';
      while (!closed) {
        const end = await source.run(frame => {
          lastReason = '';
          return onFrame(frame);
        }, onNotice);
        if (end.kind === 'finished') return end;
        if (end.reason !== lastReason) onNotice({ kind: 'lost', sentence: `${end.reason} Trying again.` });
        lastReason = end.reason;
        await wait(TRY_AGAIN_AFTER_MS);
        source = open();
      }
      return { kind: 'finished' };
    },
    close() {
      closed = true;
      source.close();
    },
  };
}
