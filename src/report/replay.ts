import { initialTransition, transition } from 'xstate';
import type { Context, Timer } from '../../machines/context.ts';
import { buildFirstStart, procedureFor } from '../../machines/first-start.ts';
import { stateName } from '../../machines/moment.ts';
import type { EngineState, Step } from '../../machines/steps.ts';
import type { Entry } from '../record/index.ts';
import { notesIn } from '../session/actions.ts';
import type { SessionHeader } from '../session/header.ts';
import { isKind, type Recorded } from './recorded.ts';
import { firstDifference } from './same-json.ts';

/** What the procedure was doing after one recorded event. */
export interface Moment {
  readonly seq: number;
  readonly timeMs: number;
  readonly state: string;
  readonly engine: EngineState;
  readonly timer: Timer | null;
  readonly context: Context;
}

/** The session once more, from its recorded events alone. */
export interface Replay {
  readonly steps: readonly Step[];
  /** The first is the beginning, before any event. */
  readonly moments: readonly Moment[];
  readonly last: Moment;
}

/** Where the recorded events lead elsewhere than the record says; names are those of the record. */
export type Difference =
  | { readonly kind: 'nothingFollows'; readonly recorded: string }
  | {
      readonly kind: 'otherState' | 'otherNote' | 'otherOutcome';
      readonly leads: string;
      readonly recorded: string;
    }
  | { readonly kind: 'otherMember'; readonly member: string };

/** Why a record is not confirmed by carrying its events out once more. */
export type ReplayFault =
  | { readonly kind: 'noHeader' }
  | { readonly kind: 'impossible'; readonly why: string }
  /** `line` counts from 1 as the lines of the file do. */
  | { readonly kind: 'differs'; readonly line: number; readonly difference: Difference };

export type ReplayResult =
  | { readonly ok: true; readonly replay: Replay }
  | { readonly ok: false; readonly fault: ReplayFault };

const notedKinds = [
  'passed',
  'verdict',
  'inTime',
  'stopped',
  'reopened',
  'skipped',
  'faults',
  'refused',
  'disagreement',
];

/**
 * Carries the recorded events out once more and holds what the procedure concludes against what the record
 * says it concluded. Who alters a verdict and chains the record anew is found out here.
 * @param entries the same entries as `recorded`, as they stand in the file
 */
export function replaySession(
  header: SessionHeader,
  recorded: readonly Recorded[],
  entries: readonly Entry[],
): ReplayResult {
  try {
    return replayAll(header, recorded, entries);
  } catch (error) {
    const why = error instanceof Error ? error.message : String(error);
    return { ok: false, fault: { kind: 'impossible', why } };
  }
}

function replayAll(
  header: SessionHeader,
  recorded: readonly Recorded[],
  entries: readonly Entry[],
): ReplayResult {
  const { profile, job } = header;
  const machine = buildFirstStart(profile);
  let [snapshot] = initialTransition(machine, { profile, job });
  const look = (seq: number, timeMs: number): Moment => ({
    seq,
    timeMs,
    state: stateName(snapshot),
    engine: snapshot.hasTag('cranking') ? 'cranking' : snapshot.hasTag('running') ? 'running' : 'off',
    timer: snapshot.context.timer,
    context: snapshot.context,
  });
  const moments: Moment[] = [look(0, 0)];
  const recordedNotes = entries.filter(entry => notedKinds.includes(entry.kind));
  let next = 0;
  const differs = (seq: number, difference: Difference): ReplayResult => ({
    ok: false,
    fault: { kind: 'differs', line: seq + 1, difference },
  });
  for (const entry of recorded.filter(isKind('event'))) {
    const early = recordedNotes[next];
    if (early && early.seq < entry.seq)
      return differs(early.seq, { kind: 'nothingFollows', recorded: early.kind });
    const [after, actions] = transition(machine, snapshot, entry.event);
    snapshot = after;
    const moment = look(entry.seq, entry.timeMs);
    if (moment.state !== entry.state)
      return differs(entry.seq, { kind: 'otherState', leads: moment.state, recorded: entry.state });
    moments.push(moment);
    for (const note of notesIn(actions)) {
      const own = recordedNotes[next];
      // The record may break off between an event and what it led to.
      if (!own) break;
      if (own.kind !== note.kind)
        return differs(own.seq, { kind: 'otherNote', leads: note.kind, recorded: own.kind });
      const difference = firstDifference(own.data, note.data);
      if (difference !== undefined) return differs(own.seq, { kind: 'otherMember', member: difference });
      next += 1;
    }
  }
  const late = recordedNotes[next];
  if (late) return differs(late.seq, { kind: 'nothingFollows', recorded: late.kind });
  const closed = recorded.find(isKind('closed'));
  if (closed && closed.data.outcome !== stateName(snapshot))
    return differs(closed.seq, {
      kind: 'otherOutcome',
      leads: stateName(snapshot),
      recorded: closed.data.outcome,
    });
  return {
    ok: true,
    replay: { steps: procedureFor(profile), moments, last: moments[moments.length - 1] ?? look(0, 0) },
  };
}
