import type { LineId, ReplyId, StepId } from '../prompts/types.ts';
import type { Profile } from '../src/profile/schema.ts';
import type { Cause, EngineState, Person, PromptValues, Quantity, Via } from './vocabulary.ts';

/** Who works on what. */
export interface JobCard {
  readonly vehicle: string;
  readonly engine: string;
  readonly technician: string;
  readonly second: string;
  readonly supervisor: string;
  /** What was built in and filled in, as it was written down; nothing is computed from it. */
  readonly serial?: string | undefined;
  readonly hours?: string | undefined;
  readonly oilUsed?: string | undefined;
  readonly coolantUsed?: string | undefined;
  readonly filterParts?: string | undefined;
}

export interface Reading {
  readonly quantity: Quantity;
  readonly si: number;
  readonly atMs: number;
  readonly step: StepId;
  /** Nobody said it: it came from the bus. */
  readonly byBus?: true;
}

/** One value of a series that is being read. */
export interface SeriesValue {
  readonly si: number;
  readonly atMs: number;
}

/** A stretch of time that has to pass; a hold moves its start forward. */
export interface Timer {
  readonly startedMs: number;
  readonly totalMs: number;
  /** How many of its useful moments have been spoken; null where none are. */
  readonly announced: number | null;
  /** Its end stops the engine, with this cause. */
  readonly stops?: Cause;
}

/** An answer that is awaited beside a running engine, or the end of a hold there. */
export interface Unanswered {
  readonly sinceMs: number;
  /** How many of its moments have been spoken. */
  readonly told: number;
  /** How long it may take. */
  readonly patience: 'glance' | 'hunt';
}

/** After this moment the missing reply counts as no. */
export interface Deadline {
  /** Since when the answer has been awaited. */
  readonly sinceMs: number;
  readonly atMs: number;
  readonly cause: Cause;
  /** Already lengthened, for a read-back. */
  readonly extended: boolean;
  /** The limit of the question itself, while a read-back runs past it. */
  readonly questionMs?: number;
}

/** One turn of the starter, in session time. */
export interface Burst {
  readonly step: StepId;
  readonly startMs: number;
  readonly endMs: number;
}

/** A fault code that was read in this session. */
export interface Fault {
  readonly spn: number;
  readonly fmi: number;
  /** When it was first read, without a break since. */
  readonly seenMs: number;
  /** Why the supervisor lets an unknown code stand. */
  readonly accepted?: string;
}

/** What was said and waits for its read-back. */
export type Pending =
  | { readonly kind: 'reply'; readonly id: ReplyId; readonly atMs: number }
  | {
      readonly kind: 'value';
      readonly quantity: Quantity;
      readonly si: number;
      /** Nobody said it: it came from the bus. */
      readonly byBus?: true;
      /** It is outside limits that stop the engine: the cause, unless it is denied in time. */
      readonly stops?: Cause;
      /** What the bus shows instead, where the value was said again against it. */
      readonly busSi?: number;
    };

export interface StopRecord {
  readonly cause: Cause | null;
  /** What was measured, or missing when its time was up: no other cause that is named afterwards makes it undone. */
  readonly found: Cause | null;
  readonly by: Person;
  readonly atMs: number;
  readonly step: StepId;
  /** The limit that an answer was too late for, s. */
  readonly lateAfterS: number | null;
  /** What was called out besides the cause while everything was made safe, or ran on: each counts as well. */
  readonly also: readonly Cause[];
  /** The tool was away so long that who and what is at the engine has to be seen anew. */
  readonly longAway: boolean;
  /** The second person called it, or called once more: only they take it back. */
  readonly secondCalled: boolean;
  /** When it was first called. */
  readonly firstMs: number;
  /** People called stop once more, when a key would long have been turned. */
  readonly insisted: boolean;
  /** Drills whose stop word has been heard before this one, and that are confirmed together with it. */
  readonly drilled: readonly StepId[];
  /** Who said the last of them, when, how and at which device of a bay; null while there is none. */
  readonly lastDrilled: {
    readonly by: Person;
    readonly atMs: number;
    readonly via?: Via;
    readonly device?: string | undefined;
  } | null;
}

/** What is not as it should be, does not stop the start, and has to be put right later. */
export interface OpenItem {
  readonly step: StepId;
  /** The value outside its limits, in SI. */
  readonly quantity?: Quantity;
  readonly si?: number;
  /** What was found there. */
  readonly finding?: ReplyId;
  readonly by: Person;
}

/** A number that was repeated within the next question. */
export interface Echoed {
  readonly step: StepId;
  readonly quantity: Quantity;
  readonly si: number;
  /** What the engine did then: it is taken back only while that is so. */
  readonly engine: EngineState;
}

export interface Skip {
  readonly step: StepId;
  readonly reason: string;
  readonly by: Person;
}

/** What is spoken or shown: a step's question or a general line, with the figures for its blanks. */
export interface Said {
  readonly line: LineId | 'ask';
  /** A general line said before it: "I did not understand." */
  readonly prefix?: LineId;
  readonly step: StepId;
  readonly values: PromptValues;
  readonly priority: 'hazard' | 'prompt' | 'notice';
  /** A hazard that is said once, not twice: the seconds for an answer run already. */
  readonly once?: true;
}

/** A time in which nobody was there, and that the clock of the session does not count. */
export interface Absence {
  readonly atMs: number;
  /** How long, s; null where no clock could tell. */
  readonly seconds: number | null;
}

/** Everything the session knows that is not in the state's name. */
export interface Context {
  readonly profile: Profile;
  readonly job: JobCard;
  readonly step: StepId;
  /** Steps passed, in the order of passing; a stop or going back takes some out again. */
  readonly done: readonly StepId[];
  readonly readings: readonly Reading[];
  /** Values of the series that is being read, before they are confirmed. */
  readonly series: readonly SeriesValue[];
  readonly pending: Pending | null;
  /** What was said against the bus and has been questioned once; said again, it goes on to its read-back. */
  readonly questioned: string | null;
  /** A value that can hardly be true and was questioned; said again, it is for the other person to read. */
  readonly doubted: { readonly quantity: Quantity; readonly si: number } | null;
  /** Misunderstandings since the last reply that counted. */
  readonly misheard: number;
  readonly timer: Timer | null;
  /** When the hold began, while it lasts. */
  readonly heldSinceMs: number | null;
  readonly deadline: Deadline | null;
  /** Since when people have been silent beside a running engine; null where nobody is asked. */
  readonly unanswered: Unanswered | null;
  /** When each watch was begun for the first time since the last stop: back in it, its longest time runs on. */
  readonly watchesBegan: Readonly<Partial<Record<StepId, number>>>;
  /** When a watch puts its question again. */
  readonly nextLookMs: number | null;
  readonly bursts: readonly Burst[];
  /** How many bursts had been made when the try that is going on began; they warm the starter, no more. */
  readonly burstsBefore: number;
  /** When the second person's "clear" was confirmed; it grows old. */
  readonly clearAtMs: number | null;
  readonly faults: readonly Fault[];
  /** The codes of the round before, while a new round is read. */
  readonly earlierFaults: readonly Fault[];
  /** The first half of a code, until its second half is there. */
  readonly spokenSpn: number | null;
  readonly skips: readonly Skip[];
  readonly openItems: readonly OpenItem[];
  /** Numbers that were only repeated, in their order: "wrong" takes back the last. */
  readonly echoed: readonly Echoed[];
  /** What is asked one thing at a time, on wish: a group of steps or the list of a step. */
  readonly oneByOne: string | null;
  /** Something in the list that is being gone through was said by voice. */
  readonly spokenInList: boolean;
  readonly stop: StopRecord | null;
  readonly stops: number;
  readonly absences: readonly Absence[];
  /** Since when the engine counts as running, of the run that is going on or was last; null before the first. */
  readonly runsSinceMs: number | null;
  /** Steps that were answered by that there is nothing to measure with: others stand in for them. */
  readonly without: readonly StepId[];
  /** Steps that were said and have taken away what was made safe before them; it has not been put on the list since. */
  readonly takenAway: readonly StepId[];
  /** Steps that were done once and that a stop put back on the list: they are asked as a check first. */
  readonly again: readonly StepId[];
  /** What the cause of the last stop put back on the list, until work goes on. */
  readonly reopened: readonly StepId[] | null;
  readonly lastSaid: Said | null;
}
