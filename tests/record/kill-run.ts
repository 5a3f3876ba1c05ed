import { join } from 'node:path';
import { readLog, reopenLog, verifyLog } from '../../src/record/index.ts';
import { sha256Hex } from '../../src/record/seal.ts';
import { startProgram } from './children.ts';
import { systemClock } from './programs/system-clock.ts';

export interface KillOutcome {
  readonly acknowledged: number;
  /** Acknowledged entries that are not in the file afterwards: always 0, or the record broke its promise. */
  readonly lost: number;
  readonly tornTail: boolean;
  readonly verified: boolean;
}

/**
 * Kills a writing process after a number of entries that differs from run to run, resumes its record, and
 * compares. Killing loses no data that the system holds in memory, so this shows what a crash of the
 * program does, not what a power loss does.
 */
export async function killAndRecover(folder: string, run: number): Promise<KillOutcome> {
  const path = join(folder, `killed-${run}.jsonl`);
  const killAfter = 1 + (Number.parseInt(sha256Hex(`run ${run}`).slice(0, 6), 16) % 60);
  const acknowledged: string[] = [];
  const program = startProgram('append-until-killed', [path]);
  for await (const line of program.lines()) {
    acknowledged.push(line);
    if (acknowledged.length === killAfter) program.kill();
  }
  const { fault } = await readLog(path);
  const { log, entries } = await reopenLog(path, () => ({ clock: systemClock }));
  await log.append('after', { run });
  await log.close();
  const kept = new Set(entries.map(entry => `${entry.seq} ${entry.hash}`));
  return {
    acknowledged: acknowledged.length,
    lost: acknowledged.filter(line => !kept.has(line)).length,
    tornTail: fault?.problem === 'tornTail',
    verified: (await verifyLog(path)).ok,
  };
}
