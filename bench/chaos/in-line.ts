import { readFileSync } from 'node:fs';

/**
 * For how long the main thread of a process has stood in line for a processor since it was started, ms, because others
 * had them all; null where the system does not say. Source: Linux, Documentation/scheduler/sched-stats.rst, the second
 * field of /proc/PID/schedstat.
 */
export function inLineMs(pid: number | undefined): number | null {
  if (pid === undefined) return null;
  try {
    const [, waitedNs] = readFileSync(`/proc/${pid}/schedstat`, 'utf8').split(' ');
    return Number(waitedNs) / 1e6;
  } catch {
    return null;
  }
}
