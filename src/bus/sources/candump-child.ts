import { spawn } from 'node:child_process';
import type { BusSource } from '../ports.ts';
import { readCandumpText } from './candump-text.ts';
import { causeOf } from './notices.ts';

/** As much of what candump complains of as is kept. */
const COMPLAINT_LENGTH = 500;

/**
 * A SocketCAN interface, read through the `candump` program of can-utils, error frames included.
 * @param interfaceName e.g. `can0`, already brought up with its bit rate
 * @param command another path to candump
 */
export function candumpOn(interfaceName: string, command = 'candump'): BusSource {
  let stop = (): void => {};
  let closed = false;
  return {
    description: `candump on ${interfaceName}`,
    async run(onFrame, onNotice) {
      if (closed) return { kind: 'finished' };
      // All data frames, and all error frames after the `#`.
      const child = spawn(command, ['-L', `${interfaceName},0:0,#FFFFFFFF`], {
        stdio: ['ignore', 'pipe', 'pipe'],
      });
      stop = () => child.kill();
      let complaint = '';
      child.stderr.setEncoding('utf8').on('data', text => {
        complaint = `${complaint}${text}`.slice(-COMPLAINT_LENGTH);
      });
      const ended = new Promise<string>(resolve => {
        child.on('error', cause => resolve(causeOf(cause)));
        child.on('close', (code, signal) =>
          resolve(complaint.trim().split('\n').at(-1) || `it ended with ${signal ?? `code ${code}`}`),
        );
      });
      try {
        await readCandumpText(child.stdout.setEncoding('latin1'), onFrame, onNotice, () => closed);
      } finally {
        child.kill();
      }
      const why = await ended;
      if (closed) return { kind: 'finished' };
      const advice = why.includes('ENOENT')
        ? 'install can-utils'
        : `check that the adapter is plugged in and ${interfaceName} is up`;
      return { kind: 'lost', reason: `candump on ${interfaceName} gives no more (${why}); ${advice}.` };
    },
    close() {
      closed = true;
      stop();
    },
  };
}
