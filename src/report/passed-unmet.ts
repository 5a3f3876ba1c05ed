import type { Recorded } from '../record/vocabulary/index.ts';

/** Where a record passes a gate against its own judgement. */
interface PassedUnmet {
  /** Counts from 1 as the lines of the file do. */
  readonly line: number;
  readonly step: string;
  readonly gate: string;
}

/**
 * Whether something was found not to be as its limit wants it. Where the rule had no limit for a time, as for a heater
 * in a cold that its table does not reach, the seconds of the question were the limit.
 */
const isUnmet = (entry: Recorded<'verdict'> | Recorded<'inTime'>): boolean =>
  !entry.data.met && (entry.kind === 'verdict' || entry.data.max != null);

/**
 * The first gate that was passed though the last judgement of its step, as the record itself has it, was that the limit
 * is not met, and nobody let it stand. No procedure of any version was meant to: one that did was wrong, whoever wrote it.
 */
export function passedUnmet(recorded: readonly Recorded[]): PassedUnmet | undefined {
  const unmet = new Set<string>();
  for (const entry of recorded) {
    switch (entry.kind) {
      case 'verdict':
      case 'inTime':
        if (isUnmet(entry)) unmet.add(entry.data.step);
        else unmet.delete(entry.data.step);
        break;
      case 'skipped':
      case 'leftOpen':
        unmet.delete(entry.data.step);
        break;
      case 'passed': {
        const { step, gate } = entry.data;
        if (gate != null && unmet.has(step)) return { line: entry.seq + 1, step, gate };
        unmet.delete(step);
        break;
      }
      default:
    }
  }
  return undefined;
}
