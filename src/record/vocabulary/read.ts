import type { Entry } from '../entry.ts';
import { type Data, isKind, type Kind, kinds } from './kinds.ts';

/** More than thirty years of milliseconds: a steady clock that says so is none. */
const LONGEST_MS = 1e12;

/** What one entry says, by its kind. */
export type Told<K extends Kind = Kind> = {
  readonly [Own in K]: { readonly kind: Own; readonly data: Data<Own> };
}[K];

interface Place {
  /** Number of the entry, from 0. */
  readonly seq: number;
  /** Wall clock, UTC. */
  readonly at: string;
  /** Session time, which neither runs backwards nor counts the time that a restart took. */
  readonly timeMs: number;
}

/** One entry of the record behind its first, in the form that the stories are made from. */
export type Recorded<K extends Exclude<Kind, 'opened'> = Exclude<Kind, 'opened'>> = {
  readonly [Own in K]: Place & Told<Own>;
}[K];

/** Whether an entry, or what it tells, is of this kind. */
export const ofKind =
  <K extends Kind>(kind: K) =>
  <T extends { readonly kind: string }>(entry: T): entry is Extract<T, { readonly kind: K }> =>
    entry.kind === kind;

/** What is said under a kind; undefined for a kind or a shape that this vocabulary does not have. */
export function understand(kind: string, data: unknown): Told | undefined {
  if (!isKind(kind)) return undefined;
  const parsed = kinds[kind].safeParse(data);
  // The schema that parsed it is the schema of its kind.
  return parsed.success ? ({ kind, data: parsed.data } as Told) : undefined;
}

export const isRestart = (kind: string): kind is 'resumed' | 'recovered' =>
  kind === 'resumed' || kind === 'recovered';

export interface RecordedSession {
  readonly entries: readonly Recorded[];
  /** Entries of unknown kind or shape: their numbers. */
  readonly notUnderstood: readonly number[];
}

/**
 * Reads the entries of a session behind the first, which `readHeader` reads. Never throws: what is not understood is
 * counted, never guessed.
 */
export function readRecorded(entries: readonly Entry[]): RecordedSession {
  const recorded: Recorded[] = [];
  const notUnderstood: number[] = [];
  let timeMs = 0;
  for (const { seq, at, monoMs, kind, data } of entries) {
    if (kind === 'opened') continue;
    const told = monoMs <= LONGEST_MS ? understand(kind, data) : undefined;
    if (told === undefined || told.kind === 'opened') {
      notUnderstood.push(seq);
      continue;
    }
    timeMs = Math.max(timeMs, monoMs);
    recorded.push({ seq, at, timeMs, ...told });
  }
  return { entries: recorded, notUnderstood };
}
