import type { RecordLog } from '../../record/index.ts';
import { closeRecord } from '../../session/save-record.ts';
import { onEndSignals } from '../signals.ts';

export interface SignalHooks {
  /** What Ctrl-C does where it comes as a signal; while null, it ends the program like the other signals. */
  interrupted: (() => void) | null;
  unhook(): void;
}

/**
 * Before a signal ends the program, closes the record; one that is only in memory is saved elsewhere. Where it is,
 * and how to go on, is told. A second signal ends the program at once.
 * @param closing what is told at the end, once the record is closed
 */
export function endBySignal(record: RecordLog, closing: () => readonly string[]): SignalHooks {
  let saving = false;
  const hooks: SignalHooks = {
    interrupted: null,
    unhook: onEndSignals(signal => {
      if (signal === 'SIGINT' && hooks.interrupted && !saving) return hooks.interrupted();
      const end = () => {
        hooks.unhook();
        process.kill(process.pid, signal);
      };
      if (saving) return end();
      saving = true;
      // A terminal that was closed takes no more words; the record matters more than to say so.
      for (const stream of [process.stdout, process.stderr]) stream.on('error', () => {});
      closeRecord(record)
        .catch((error: unknown) => (error instanceof Error ? error.message : String(error)))
        .then(elsewhere => {
          for (const line of [...(elsewhere === undefined ? [] : [elsewhere]), ...closing()])
            console.error(line);
          end();
        });
    }),
  };
  return hooks;
}
