import { initialTransition, transition } from 'xstate';
import type { Context, Timer } from '../../machines/context.ts';
import { buildFirstStart, type FirstStart, procedureFor } from '../../machines/first-start.ts';
import { type Moment as Snapshot, stateName } from '../../machines/moment.ts';
import type { EngineState, Step } from '../../machines/steps.ts';
import type { Entry } from '../record/index.ts';
import {
  formerVocabulary,
  inJson,
  type Note,
  type NoteKind,
  newerVocabulary,
  olderVocabulary,
  type Recorded,
} from '../record/vocabulary/index.ts';
import { notesIn } from '../session/actions.ts';
import type { SessionHeader } from '../session/header.ts';
import { passedUnmet } from './passed-unmet.ts';
import { proseIn } from './prose.ts';
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
type Difference =
  | { readonly kind: 'nothingFollows'; readonly recorded: string }
  | { readonly kind: 'noteLacking'; readonly leads: string }
  | {
      readonly kind: 'otherState' | 'otherNote' | 'otherOutcome';
      readonly leads: string;
      readonly recorded: string;
    }
  | { readonly kind: 'otherMember'; readonly member: string };

/** Why a record is not confirmed by carrying its events out once more. */
export type ReplayFault =
  | { readonly kind: 'noHeader' }
  | { readonly kind: 'newerVersion' | 'olderVersion'; readonly version: number }
  | { readonly kind: 'impossible'; readonly why: string }
  /** A gate was passed though the record's own judgement says that its limit was not met. */
  | { readonly kind: 'passedUnmet'; readonly line: number; readonly step: string; readonly gate: string }
  /** `line` counts from 1 as the lines of the file do. */
  | { readonly kind: 'differs'; readonly line: number; readonly difference: Difference };

type ReplayResult =
  | { readonly ok: true; readonly replay: Replay }
  | { readonly ok: false; readonly fault: ReplayFault };

/**
 * Carries the recorded events out once more and holds what the procedure concludes against what the record
 * says it concluded: numbers, verdicts and names, but not the prose that explains them. Who alters a verdict and chains
 * the record anew is found out here.
 * @param entries the same entries as `recorded`, as they stand in the file
 */
export function replaySession(
  header: SessionHeader,
  recorded: readonly Recorded[],
  entries: readonly Entry[],
): ReplayResult {
  const version = newerVocabulary(entries);
  if (version !== null) return { ok: false, fault: { kind: 'newerVersion', version } };
  const older = olderVocabulary(entries);
  if (older !== null) return { ok: false, fault: { kind: 'olderVersion', version: older } };
  const unmet = passedUnmet(recorded);
  if (unmet) return { ok: false, fault: { kind: 'passedUnmet', ...unmet } };
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
  const written = new Map(entries.map(({ seq, data }) => [seq, data]));
  const again = new SessionAgain(header);
  for (const entry of recorded) {
    const difference = again.take(entry, written.get(entry.seq));
    if (!difference) continue;
    // Its events may honestly have led elsewhere then: that is no sign that it was altered, and it is not confirmed.
    const former = formerVocabulary(entries);
    if (former !== null) return { ok: false, fault: { kind: 'olderVersion', version: former } };
    return { ok: false, fault: { kind: 'differs', line: entry.seq + 1, difference } };
  }
  return { ok: true, replay: again.replay() };
}

/** The session carried out once more, entry by entry of its record. */
class SessionAgain {
  readonly #steps: readonly Step[];
  readonly #machine: FirstStart;
  #snapshot: Snapshot;
  readonly #moments: Moment[];
  /** What the last event led to, as far as the record has not told it yet. */
  #awaited: readonly Note[] = [];
  #justRestarted = false;

  constructor({ profile, job }: SessionHeader) {
    this.#steps = procedureFor(profile);
    this.#machine = buildFirstStart(profile);
    [this.#snapshot] = initialTransition(this.#machine, { profile, job });
    this.#moments = [this.#look(0, 0)];
  }

  replay(): Replay {
    return { steps: this.#steps, moments: this.#moments, last: this.#moments.at(-1) ?? this.#look(0, 0) };
  }

  /**
   * Takes the next entry of the record.
   * @param written its data as they stand in the file, with what the vocabulary does not name
   * @returns where the procedure comes to something else
   */
  take(entry: Recorded, written: unknown): Difference | undefined {
    switch (entry.kind) {
      case 'event':
        return this.#carryOut(entry);
      case 'resumed':
      case 'recovered':
        // The record may have broken off between an event and what it led to.
        this.#awaited = [];
        this.#justRestarted = true;
        return undefined;
      case 'closed':
        return this.#close(entry.data.outcome);
      case 'passed':
      case 'verdict':
      case 'inTime':
      case 'stopped':
      case 'reopened':
      case 'skipped':
      case 'faults':
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
      case 'otherVoice':
        return this.#compare(entry.kind, written);
      case 'heard':
      case 'said':
      case 'problem':
      case 'hearing':
      case 'reading':
      case 'engineHeard':
      case 'besideOthers':
      case 'voiceLearned':
      case 'command':
      case 'notCarriedOut':
        return undefined;
      default:
        return entry satisfies never;
    }
  }

  #carryOut({ seq, timeMs, data }: Recorded<'event'>): Difference | undefined {
    const [lacking] = this.#awaited;
    if (lacking) return { kind: 'noteLacking', leads: lacking.kind };
    // Whoever goes on with a session must first be told what the engine is doing.
    if (this.#justRestarted && data.type !== 'stop')
      return { kind: 'otherNote', leads: 'stop', recorded: data.type };
    this.#justRestarted = false;
    const [after, actions] = transition(this.#machine, this.#snapshot, data);
    this.#snapshot = after;
    const moment = this.#look(seq, timeMs);
    if (moment.state !== data.state) return { kind: 'otherState', leads: moment.state, recorded: data.state };
    this.#moments.push(moment);
    this.#awaited = notesIn(actions);
    return undefined;
  }

  #compare(recorded: NoteKind, written: unknown): Difference | undefined {
    const [own, ...others] = this.#awaited;
    if (!own) return { kind: 'nothingFollows', recorded };
    if (own.kind !== recorded) return { kind: 'otherNote', leads: own.kind, recorded };
    this.#awaited = others;
    const member = firstDifference(written, inJson(own.data), proseIn(recorded, own.data));
    return member === undefined ? undefined : { kind: 'otherMember', member };
  }

  #close(recorded: string): Difference | undefined {
    const [lacking] = this.#awaited;
    if (lacking) return { kind: 'noteLacking', leads: lacking.kind };
    const leads = stateName(this.#snapshot);
    return recorded === leads ? undefined : { kind: 'otherOutcome', leads, recorded };
  }

  #look(seq: number, timeMs: number): Moment {
    const snapshot = this.#snapshot;
    return {
      seq,
      timeMs,
      state: stateName(snapshot),
      engine: snapshot.hasTag('cranking') ? 'cranking' : snapshot.hasTag('running') ? 'running' : 'off',
      timer: snapshot.context.timer,
      context: snapshot.context,
    };
  }
}
