import type { RecordLog } from '../../record/index.ts';
import { closeRecord } from '../../session/save-record.ts';

const SIGNALS = ['SIGTERM', 'SIGINT', 'SIGHUP'] as const;

/**
 * Before a signal ends the program, closes the record; one that is only in memory is saved elsewhere, and the
 * place is named. A second signal ends the program at once.
 *
 * @returns what takes this away again
 */
export function saveOnSignal(record: RecordLog): () => void {
  let saving = false;
  const endBy = (signal: NodeJS.Signals) => {
    unhook();
    process.kill(process.pid, signal);
  };
  const signalled = (signal: NodeJS.Signals) => {
    if (saving) return endBy(signal);
    saving = true;
    // A terminal that was closed takes no more words; the record matters more than to say so.
    for (const stream of [process.stdout, process.stderr]) stream.on('error', () => {});
    closeRecord(record)
      .catch((error: unknown) => (error instanceof Error ? error.message : String(error)))
      .then(sentence => {
        if (sentence !== undefined) console.error(sentence);
        endBy(signal);
      });
  };
  const unhook = () => {
    for (const signal of SIGNALS) process.off(signal, signalled);
  };
  for (const signal of SIGNALS) process.on(signal, signalled);
  return unhook;
}
