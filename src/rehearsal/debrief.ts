import type { Entry } from '../record/index.ts';
import { type Recorded, readRecorded } from '../record/vocabulary/index.ts';
import type { Contradiction } from './contradictions.ts';
import { type CaughtBy, type FaultName, type FaultPhase, faultKinds, type PlannedFault } from './faults.ts';
import type { InjectedFault } from './rehearsal.ts';

/** How one fault went. */
export interface FaultDebrief {
  readonly fault: FaultName;
  readonly phase: FaultPhase;
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
  /** Faults that were planned and that the session never came to. */
  readonly neverCame: readonly PlannedFault[];
  /** Answers that the gauges contradict. */
  readonly contradictions: readonly (Contradiction & { readonly atS: number })[];
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

/** To the tenth: nobody's reaction is timed finer. */
const seconds = (ms: number) => Math.round(ms / 100) / 10;

/** What a session did that may mean a fault was caught, in its order. */
const sightings = (entries: readonly Recorded[]): Seen[] =>
  entries.flatMap((entry, index) => seenIn(entry, () => causeOf(entries, index) ?? ''));

function seenIn(entry: Recorded, cause: () => string): Seen[] {
  const seen = (by: Seen['by'], step: string, what: string): Seen => ({
    by,
    what,
    step,
    atMs: entry.timeMs,
  });
  switch (entry.kind) {
    case 'stopped':
      return [seen('stop', entry.data.step, cause())];
    case 'said':
      return [seen('line', entry.data.step, entry.data.line)];
    case 'verdict':
      return entry.data.met ? [] : [seen('reading', entry.data.step, entry.data.step)];
    case 'faults':
      return entry.data.faults.map(({ spn }) => seen('code', entry.data.step, String(spn)));
    case 'resumed':
    case 'recovered':
    case 'event':
    case 'passed':
    case 'inTime':
    case 'reopened':
    case 'skipped':
    case 'refused':
    case 'disagreement':
    case 'contradiction':
    case 'doubted':
    case 'vouched':
    case 'barred':
    case 'takenBack':
    case 'found':
    case 'leftOpen':
    case 'settled':
    case 'heard':
    case 'problem':
    case 'hearing':
    case 'reading':
    case 'engineHeard':
    case 'besideOthers':
    case 'otherVoice':
    case 'voiceLearned':
    case 'command':
    case 'notCarriedOut':
    case 'closed':
      return [];
  }
}

/** The cause of a stop, or the one that was named for it later; a drill of the word is one too. */
function causeOf(entries: readonly Recorded[], stopped: number): string | null {
  const own = entries[stopped];
  if (own?.kind === 'stopped' && own.data.cause != null) return own.data.cause;
  const later = entries
    .slice(stopped + 1)
    .find(entry => entry.kind === 'reopened' || entry.kind === 'stopped');
  return later?.kind === 'reopened' ? (later.data.cause ?? null) : null;
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

/** What a rehearsal knows beside the session's record. */
interface Beside {
  readonly planned: readonly PlannedFault[];
  readonly injected: readonly InjectedFault[];
  readonly contradictions: readonly Contradiction[];
}

/** Looks back on a rehearsal: the session's record against the faults that had come, and when. */
export function debrief(
  entries: readonly Entry[],
  { planned, injected, contradictions }: Beside,
  outcome: Debrief['outcome'],
): Debrief {
  const { entries: recorded } = readRecorded(entries);
  const seen = sightings(recorded);
  return {
    outcome,
    sessionS: seconds(recorded.at(-1)?.timeMs ?? 0),
    faults: injected.map(({ name, phase, atMs }) => {
      const { caughtBy } = faultKinds[name];
      const first = seen.find(each => each.atMs >= atMs && catches(caughtBy, each));
      return {
        fault: name,
        phase,
        noticed: first
          ? { by: first.by, what: first.what, step: first.step, afterS: seconds(first.atMs - atMs) }
          : null,
      };
    }),
    neverCame: planned.filter(
      ({ name, phase }) => !injected.some(fault => fault.name === name && fault.phase === phase),
    ),
    contradictions: contradictions.map(each => ({ ...each, atS: seconds(each.atMs) })),
    stops: seen
      .filter(each => each.by === 'stop')
      .map(({ step, what, atMs }) => ({ atS: seconds(atMs), step, cause: what === '' ? null : what })),
    unclear: recorded.filter(entry => entry.kind === 'heard' && entry.data.kind === 'unclear').length,
  };
}
