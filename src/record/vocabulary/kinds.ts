import { z } from 'zod';
import type { LineId, StepId } from '../../../prompts/types.ts';
import { eventSchema } from './event.ts';
import type { Cause, Emergency, Gate, outcomes, Person, Quantity, Via } from './names.ts';
import { openedSchema, vocabulary } from './opened.ts';
import { maybe, name, number, text } from './shapes.ts';

/** How a value stands to its limits, and by which rule. */
const judged = {
  met: z.boolean(),
  min: maybe(number),
  max: maybe(number),
  margin: maybe(number),
  /** What was held against the limits and in which unit, where that is not the value itself. */
  of: maybe(number),
  ofUnit: maybe(text),
  rule: maybe(text),
  source: maybe(text),
  /** Why it is not met, where no limit says so. */
  why: maybe(text),
};

/** Whoever called is not at the engine, and cannot see it; or the tool was saying that very word. */
export type NotCarriedOut = 'notAtEngine' | 'toolSpoke';

/**
 * What the procedure concludes from an event, written right behind it. A replay holds each of these against what the
 * procedure concludes once more.
 */
export const noteKinds = {
  /** A step is done, with the gate that it helps to open and the figures that were computed for it. */
  passed: z.object({
    step: name<StepId>(),
    by: maybe(name<Person>()),
    gate: maybe(name<Gate>()),
    misheard: maybe(number),
    figures: z.unknown().optional(),
  }),
  /** A reading against its limits, in SI. */
  verdict: z.object({
    step: name<StepId>(),
    quantity: maybe(name<Quantity>()),
    value: maybe(number),
    unit: maybe(text),
    /** All values of a series, `value` being its last. */
    series: maybe(z.array(number)),
    via: maybe(name<Via>()),
    /** What the bus showed instead. */
    bus: maybe(number),
    ...judged,
  }),
  /** How long a reply took where seconds count, held against its limit. */
  inTime: z.object({ step: name<StepId>(), seconds: maybe(number), unit: text, ...judged }),
  stopped: z.object({ step: name<StepId>(), cause: maybe(name<Cause>()), by: maybe(name<Person>()) }),
  /** What a stop's cause put back on the list. */
  reopened: z.object({ cause: maybe(name<Cause>()), steps: z.array(name<StepId>()) }),
  /** What the second person found, by size, colour or kind, and what came of it. */
  found: z.object({
    step: name<StepId>(),
    point: text,
    finding: text,
    does: name<'stops' | 'lookAgain' | 'open'>(),
    /** Since the engine fired, s. */
    afterS: maybe(number),
  }),
  /** What is not as it should be and does not stop the start: it has to be put right later. In SI. */
  leftOpen: z.object({
    step: name<StepId>(),
    quantity: maybe(name<Quantity>()),
    value: maybe(number),
    unit: maybe(text),
    finding: maybe(text),
    by: name<Person>(),
  }),
  /** What was left open at this step has come right. */
  settled: z.object({ step: name<StepId>() }),
  skipped: z.object({ step: name<StepId>(), reason: text, by: name<Person>() }),
  faults: z.object({
    step: name<StepId>(),
    faults: z.array(
      z.object({
        spn: number,
        fmi: number,
        meaning: maybe(text),
        decision: name<'blocks' | 'mayGoOn' | 'watch'>(),
        accepted: maybe(text),
      }),
    ),
  }),
  /** Cranking, with the gates that are not met. */
  refused: z.object({ step: name<StepId>(), unmet: z.array(name<Gate>()) }),
  /** What was said against the bus; the verdict or the next answer says what became of it. */
  disagreement: z.object({
    step: name<StepId>(),
    quantity: maybe(name<Quantity>()),
    lamp: maybe(text),
    spoken: maybe(z.union([number, text])),
    bus: maybe(z.union([number, text, z.array(z.object({ spn: number, fmi: number })).readonly()])),
    /** What the microphone heard of the engine instead. */
    heard: maybe(number),
    unit: maybe(text),
    allowed: maybe(number),
    rule: maybe(text),
  }),
  /** A value that can hardly be true, against what it would have to be: it was questioned, and not taken. In SI. */
  doubted: z.object({
    step: name<StepId>(),
    quantity: maybe(name<Quantity>()),
    value: maybe(number),
    unit: maybe(text),
    /** A reply that comes too early, with the seconds it would take at the least. */
    reply: maybe(text),
    via: maybe(name<Via>()),
    ...judged,
  }),
  /** Somebody else read it too, and it was taken. In SI. */
  vouched: z.object({
    step: name<StepId>(),
    quantity: maybe(name<Quantity>()),
    value: maybe(number),
    before: maybe(number),
    unit: maybe(text),
    reply: maybe(text),
    by: name<Person>(),
  }),
  /** Said in the second person's name in a voice that was surely the technician's: not taken. */
  otherVoice: z.object({ step: name<StepId>(), certainty: maybe(number) }),
  /** What ends the start for good, whatever is said afterwards. */
  barred: z.object({ step: name<StepId>(), why: name<LineId>() }),
  /** Another number was said while one was read back: neither counted. In SI. */
  contradiction: z.object({
    step: name<StepId>(),
    quantity: maybe(name<Quantity>()),
    before: maybe(number),
    now: maybe(number),
  }),
  /** A number that had been repeated within the next question was denied: its steps are asked again. In SI. */
  takenBack: z.object({
    step: name<StepId>(),
    quantity: maybe(name<Quantity>()),
    value: maybe(number),
  }),
};

/** What a session and its server tell beside the procedure. */
const toldKinds = {
  /** What an ear or a key took in, counted or not. */
  heard: z.object({
    text,
    kind: name<'stop' | 'reply' | 'number' | 'unclear'>(),
    via: name<Via>(),
    by: name<Person>(),
    confidence: maybe(number),
    /** Why it was not understood. */
    reason: maybe(text),
  }),
  said: z.object({
    text,
    line: name<LineId | 'ask'>(),
    step: name<StepId>(),
    priority: name<'hazard' | 'prompt' | 'notice'>(),
  }),
  /** A sentence for the people at the engine about something that does not work. */
  problem: z.object({ sentence: text }),
  /** What the ear found out about voice and noise. */
  hearing: z.object({ finding: text, noiseDbfs: maybe(number), aboveNoiseDb: maybe(number) }),
  /** A gauge value that nobody had to say: from the vehicle bus, or from a model of an engine. */
  reading: z.object({ quantity: name<Quantity>(), si: number, via: name<Via>() }),
  /**
   * What the microphone heard of the engine: its speed, how sure that was, and what happened; or how an idle hunts
   * (to either side, and in what time), or which band of its sound is louder or fainter than in its first minute. Nothing is
   * judged by it.
   */
  engineHeard: z.object({
    rpm: maybe(number),
    certainty: maybe(number),
    happened: maybe(
      name<'cranking' | 'fired' | 'running' | 'stalled' | 'lost' | 'hunting' | 'overspeed' | 'changed'>(),
    ),
    amplitudeRpm: maybe(number),
    periodS: maybe(number),
    fromHz: maybe(number),
    toHz: maybe(number),
    db: maybe(number),
    /** Whose device heard it, where several might have. */
    microphone: maybe(text),
  }),
  /**
   * Where a figure of this start stands among the earlier starts of the same engine in the shop, in the unit named, with
   * what is normal among them. Nothing is judged by it.
   */
  besideOthers: z.object({
    step: name<StepId>(),
    figure: text,
    value: number,
    unit: text,
    others: number,
    below: number,
    above: number,
    median: number,
    min: number,
    max: number,
    within: z.boolean(),
  }),
  /** Somebody's voice has been learned, from so many utterances, and whether it is kept beyond the session. */
  voiceLearned: z.object({ by: name<Person>(), utterances: number, kept: z.boolean() }),
  /** What a paired device asked for, before its effects; what came of it stands in the entries that follow. */
  command: z.object({ id: text, device: text, name: text, role: name<Person>(), do: text }),
  /** What a paired device called for help for, and why the session was not told so; a stop that it came with was carried out. */
  notCarriedOut: z.object({
    id: text,
    device: text,
    name: text,
    role: name<Person>(),
    do: text,
    cause: name<Emergency>(),
    why: name<NotCarriedOut>(),
  }),
  /** The session is over. */
  closed: z.object({ outcome: name<(typeof outcomes)[number]>() }),
};

/** How a record begins, and goes on after an interruption; the record itself writes them. */
const recordKinds = {
  opened: openedSchema,
  resumed: z.object({ vocabulary }),
  /** Resumed behind a line that had been cut off; its bytes are kept. */
  recovered: z.object({ vocabulary, tornBase64: maybe(text) }),
};

/** Every kind of entry that a session's record may hold, with the shape of its data. */
export const kinds = {
  ...recordKinds,
  /** What happened, and the state that it led to. */
  event: z.intersection(eventSchema, z.object({ state: text })),
  ...noteKinds,
  ...toldKinds,
} satisfies Readonly<Record<string, z.ZodType>>;

export type Kind = keyof typeof kinds;
export type NoteKind = keyof typeof noteKinds;
export type RecordKind = keyof typeof recordKinds;

export const isKind = (kind: string): kind is Kind => Object.hasOwn(kinds, kind);
export const isNoteKind = (kind: string): kind is NoteKind => Object.hasOwn(noteKinds, kind);

/** What may be written under a kind. */
export type Written<K extends Kind> = Readonly<z.input<(typeof kinds)[K]>>;
/** What may be read under a kind. */
export type Data<K extends Kind> = Readonly<z.output<(typeof kinds)[K]>>;

/** A conclusion of the procedure, as it is written beside the event that caused it. */
export type Note = { readonly [K in NoteKind]: { readonly kind: K; readonly data: Written<K> } }[NoteKind];
