import { join } from 'node:path';
import { type Entry, readLog } from '../../../src/record/index.ts';
import { firstFire } from '../../helpers/first-fire.ts';
import { scratchFolder } from '../../helpers/scratch.ts';

/** How long a whole start by sound may take before it is given up. */
export const WHOLE_START_MS = 15 * 60_000;

/** Runs a recorded session to its end, and gives back its record. */
export async function hearSession(sound: string, profile: string, more: readonly string[] = []) {
  const log = join(scratchFolder(), 'record.jsonl');
  const ran = await firstFire(['--profile', profile, '--hear', sound, '--fast', '--log', log, ...more]);
  return { ran, log, entries: (await readLog(log)).entries };
}

export const events = (entries: readonly Entry[]) => entries.filter(entry => entry.kind === 'event');
