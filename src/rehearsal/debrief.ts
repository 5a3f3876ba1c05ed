import type { Entry } from '../record/index.ts';
import { type CaughtBy, type FaultName, type FaultPhase, faultKinds } from './faults.ts';
import type { InjectedFault } from './rehearsal.ts';

/** How one fault went. */
export interface FaultDebrief {
  readonly fault: FaultName;
  readonly phase: FaultPhase;
  readonly wrong: string;
  /** What the session did, and how long after the fault came; null: it was missed. */
  readonly noticed: {
    readonly by: 'stop' | 'line' | 'reading' | 'code';
    /** The cause, line, step or code. */
    readonly what: string;
    readonly step: string;
    readonly afterS: number;
  } | null;
}

export interface Debrief {
  readonly outcome: 'signedOff' | 'ended' | 'left';
  readonly sessionS: number;
  readonly faults: readonly FaultDebrief[];
  /** Every stop, in its order. */
  readonly stops: readonly { readonly atS: number; readonly step: string; readonly cause: string | null }[];
  /** What was said or typed and not understood. */
  readonly unclear: number;
}

interface Seen {
  readonly by: NonNullable<FaultDebrief['noticed']>['by'];
  readonly what: string;
  readonly step: string;
  readonly atMs: number;
}

const text = (value: unknown): string => (typeof value === 'string' ? value : '');

/** To the tenth: nobody's reaction is timed finer. */
const seconds = (ms: number) => Math.round(ms / 100) / 10;

/** What a session did that may mean a fault was caught, in its order. */
function sightings(entries: readonly Entry[]): Seen[] {
  return entries.flatMap(({ kind, data, monoMs }, index): Seen[] => {
    const step = text(data.step);
    const seen = (by: Seen['by'], what: string): Seen[] => [{ by, what, step, atMs: monoMs }];
    switch (kind) {
      case 'stopped':
        return seen('stop', causeOf(entries, index) ?? '');
      case 'said':
        return seen('line', text(data.line));
      case 'verdict':
        return data.met === false ? seen('reading', step) : [];
      case 'faults':
        return [data.faults]
          .flat()
          .flatMap(row => (typeof row === 'object' && row !== null && 'spn' in row ? [String(row.spn)] : []))
          .flatMap(spn => seen('code', spn));
      default:
        return [];
    }
  });
}

/** The cause of a stop, or the one that was named for it later. */
function causeOf(entries: readonly Entry[], stopped: number): string | null {
  const own = entries[stopped]?.data.cause;
  if (typeof own === 'string') return own;
  const later = entries
    .slice(stopped + 1)
    .find(entry => entry.kind === 'reopened' || entry.kind === 'stopped');
  return later?.kind === 'reopened' && typeof later.data.cause === 'string' ? later.data.cause : null;
}

function catches({ stops = [], lines = [], unmet = [], codes = [] }: CaughtBy, { by, what }: Seen): boolean {
  const wanted: Record<Seen['by'], readonly (string | number)[]> = {
    stop: stops,
    line: lines,
    reading: unmet,
    code: codes,
  };
  return wanted[by].some(each => String(each) === what);
}

/** Looks back on a rehearsal: the session's record against the faults that had come, and when. */
export function debrief(
  entries: readonly Entry[],
  injected: readonly InjectedFault[],
  outcome: Debrief['outcome'],
): Debrief {
  const seen = sightings(entries);
  return {
    outcome,
    sessionS: seconds(entries.at(-1)?.monoMs ?? 0),
    faults: injected.map(({ name, phase, atMs }) => {
      const { wrong, caughtBy } = faultKinds[name];
      const first = seen.find(each => each.atMs >= atMs && catches(caughtBy, each));
      return {
        fault: name,
        phase,
        wrong,
        noticed: first
          ? { by: first.by, what: first.what, step: first.step, afterS: seconds(first.atMs - atMs) }
          : null,
      };
    }),
    stops: seen
      .filter(each => each.by === 'stop')
      .map(({ step, what, atMs }) => ({ atS: seconds(atMs), step, cause: what === '' ? null : what })),
    unclear: entries.filter(({ kind, data }) => kind === 'heard' && data.kind === 'unclear').length,
  };
}
