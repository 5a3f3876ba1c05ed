import { z } from 'zod';
import type { SessionEvent } from '../../machines/events.ts';
import { type Entry, OPENED, RECOVERED, REOPENED } from '../record/index.ts';
import { eventSchema } from '../session/resume.ts';

const text = z.string();
/** No gauge, code or share comes near this; larger numbers are no readings, and no plot could hold them. */
const LARGEST = 1e12;
const number = z.number().min(-LARGEST).max(LARGEST);
/** More than thirty years of milliseconds: a steady clock that says so is none. */
const LONGEST_MS = 1e12;
const maybe = <T extends z.ZodType>(schema: T) => schema.nullish();

/** What a session writes, kind by kind; members that a report has no use for are left out. */
const schemas = {
  heard: z.object({
    text,
    kind: text,
    via: text,
    by: text,
    confidence: maybe(number),
    reason: maybe(text),
  }),
  said: z.object({ text, line: text, step: text, priority: text }),
  passed: z.object({ step: text, by: maybe(text), gate: maybe(text), misheard: maybe(number) }),
  verdict: z.object({
    step: text,
    quantity: maybe(text),
    value: maybe(number),
    unit: maybe(text),
    met: z.boolean(),
    min: maybe(number),
    max: maybe(number),
    margin: maybe(number),
    rule: maybe(text),
    source: maybe(text),
    why: maybe(text),
    series: maybe(z.array(number)),
  }),
  /** How long a reply took where seconds count, held against its limit. */
  inTime: z.object({
    step: text,
    seconds: maybe(number),
    unit: text,
    met: z.boolean(),
    max: maybe(number),
    margin: maybe(number),
    rule: maybe(text),
    source: maybe(text),
    why: maybe(text),
  }),
  stopped: z.object({ step: text, cause: maybe(text), by: maybe(text) }),
  reopened: z.object({ cause: maybe(text), steps: z.array(text) }),
  skipped: z.object({ step: text, reason: text, by: text }),
  faults: z.object({
    step: text,
    faults: z.array(
      z.object({
        spn: number,
        fmi: number,
        meaning: maybe(text),
        decision: text,
        accepted: maybe(text),
      }),
    ),
  }),
  refused: z.object({ step: text, unmet: z.array(text) }),
  /** What was said against the bus; the verdict or the next answer says what became of it. */
  disagreement: z.object({
    step: text,
    quantity: maybe(text),
    lamp: maybe(text),
    spoken: z.union([number, text]),
    bus: z.union([number, text, z.array(z.object({ spn: number, fmi: number }))]),
  }),
  problem: z.object({ sentence: text }),
  /** What the ear found out about voice and noise. */
  hearing: z.object({ finding: text, noiseDbfs: maybe(number), aboveNoiseDb: maybe(number) }),
  closed: z.object({ outcome: text }),
  /** What a paired device asked for; what came of it stands in the entries that follow. */
  command: z.object({ id: text, device: text, name: text, role: text, do: text }),
  /** A gauge value that nobody had to say: from the vehicle bus, or from a model of an engine. */
  reading: z.object({ quantity: text, si: number, via: text }),
};

type Kind = keyof typeof schemas;

interface Place {
  /** Number of the entry, from 0. */
  readonly seq: number;
  /** Wall clock, UTC. */
  readonly at: string;
  /** Session time, which neither runs backwards nor counts the time that a restart took. */
  readonly timeMs: number;
}

/** One entry of the record in the form that the stories are made from. */
export type Recorded = Place &
  (
    | { [K in Kind]: { readonly kind: K; readonly data: Readonly<z.infer<(typeof schemas)[K]>> } }[Kind]
    | { readonly kind: 'event'; readonly event: SessionEvent; readonly state: string }
    | { readonly kind: 'restarted' }
  );

export type RecordedOf<K extends Recorded['kind']> = Extract<Recorded, { readonly kind: K }>;

export const isKind =
  <K extends Recorded['kind']>(kind: K) =>
  (entry: Recorded): entry is RecordedOf<K> =>
    entry.kind === kind;

export interface RecordedSession {
  readonly entries: readonly Recorded[];
  /** Entries of unknown kind or shape, which the report cannot show: their numbers. */
  readonly notUnderstood: readonly number[];
}

const isSessionEvent = (data: unknown): data is SessionEvent => eventSchema.safeParse(data).success;

/** Reads entries by their kind. Never throws: what is not understood is counted, never guessed. */
export function readRecorded(entries: readonly Entry[]): RecordedSession {
  const recorded: Recorded[] = [];
  const notUnderstood: number[] = [];
  let timeMs = 0;
  for (const entry of entries) {
    if (entry.kind === OPENED) continue;
    if (entry.monoMs > LONGEST_MS) {
      notUnderstood.push(entry.seq);
      continue;
    }
    const restarted = entry.kind === REOPENED || entry.kind === RECOVERED;
    // The clock of a program that goes on with a record begins anew in its first entry.
    if (!restarted) timeMs = Math.max(timeMs, entry.monoMs);
    const place: Place = { seq: entry.seq, at: entry.at, timeMs };
    const told = restarted ? { ...place, kind: 'restarted' as const } : understand(entry, place);
    if (told) recorded.push(told);
    else notUnderstood.push(entry.seq);
  }
  return { entries: recorded, notUnderstood };
}

function understand({ kind, data }: Entry, place: Place): Recorded | undefined {
  if (kind === 'event') {
    const { state } = data;
    return isSessionEvent(data) && typeof state === 'string'
      ? { ...place, kind: 'event', event: data, state }
      : undefined;
  }
  if (!Object.hasOwn(schemas, kind)) return undefined;
  return parseAs(kind as Kind, data, place);
}

function parseAs(kind: Kind, data: unknown, place: Place): Recorded | undefined {
  const parsed = schemas[kind].safeParse(data);
  // The schema that parsed it is the schema of its kind.
  return parsed.success ? ({ ...place, kind, data: parsed.data } as Recorded) : undefined;
}
