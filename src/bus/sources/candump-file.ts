import { createReadStream } from 'node:fs';
import type { BusSource } from '../ports.ts';
import { readCandumpText } from './candump-text.ts';
import { causeOf } from './notices.ts';

/** A log file in the format of `candump -L`, played as fast as its reader takes it. */
export function candumpFile(path: string): BusSource {
  let closed = false;
  return {
    description: `candump log ${path}`,
    async run(onFrame, onNotice) {
      const stream = createReadStream(path, { encoding: 'latin1' });
      try {
        await readCandumpText(stream, onFrame, onNotice, () => closed);
        return { kind: 'finished' };
      } catch (cause) {
        return {
          kind: 'lost',
          reason: `The bus log ${path} could not be read (${causeOf(cause)}); check the path.`,
        };
      } finally {
        stream.destroy();
      }
    },
    close() {
      closed = true;
    },
  };
}
