import type { GroupId, LineId, ReplyId, StepId } from '../prompts/types.ts';
import type { Issue, Result, Verdict } from '../src/engineering/result.ts';
import type { Lamp } from '../src/profile/schema.ts';
import type { Context, SeriesValue } from './context.ts';
import type { Code } from './events.ts';
import type { Cause, EngineState, Gate, InspectPoint, Person, PromptValues, Quantity } from './vocabulary.ts';

export type { EngineState };

/** A value held against its limits; an issue where the rule has no answer, which never counts as met. */
export type Judgement =
  | { readonly ok: true; readonly value: Verdict }
  | { readonly ok: false; readonly issue: Issue }
  /** Judged as not met, with a sentence of its own; `waitS`: nobody is asked again before that many seconds. */
  | {
      readonly ok: false;
      readonly line: LineId;
      readonly verdict: Verdict;
      readonly values?: PromptValues;
      readonly waitS?: number;
      /** Nobody looks for its cause beside a running engine: it stops with this one. */
      readonly stops?: Cause;
    };

/** @param nowMs when it is read, session time, for rules that ask how long a value has been so */
export type Judge = (context: Context, valueSi: number, nowMs?: number) => Judgement;

interface StepBase {
  readonly id: StepId;
  readonly by: Person;
  readonly engine: EngineState;
  /** The gate this step helps to open. Its replies are read back. */
  readonly gate?: Gate;
  /** The gates without which the step is not begun. */
  readonly needs?: readonly Gate[];
  /** Figures for the blanks in the step's prompt: they stand on the record as well. */
  readonly values?: (context: Context) => PromptValues;
  /** What parts of this engine are called, for other blanks: nothing that was computed. */
  readonly words?: PromptValues;
  /** Beside a running engine: a glance, or a hunt that takes walking; where it is left out, by the kind of step. */
  readonly patience?: 'glance' | 'hunt';
  /** The step is passed over where this is false, and never shown. */
  readonly when?: (context: Context) => boolean;
}

/**
 * Steps that may be asked together: done at one place, by one person, at most four, each named, and answered by a
 * phrase that no other state takes. Long lists are not read to their end and lead to answers by habit: short ones, in
 * groups by place (Degani and Wiener, Human Factors of Flight-Deck Checklists, NASA CR 177549). Never people's safety,
 * cut-off, fuelling, cap, clear or leaks.
 */
export interface Together {
  readonly group: GroupId;
  readonly ok: ReplyId;
}

/** Somebody says that a thing is so. */
export interface ConfirmStep extends StepBase {
  readonly kind: 'confirm';
  readonly ok: ReplyId;
  /** Asked together with the steps beside it that name the same group, in one question with a reply of its own. */
  readonly together?: Together;
  /** Numbers that were only repeated until now: the step names them in its question, and asks for them again where one is wrong. */
  readonly readsBack?: readonly StepId[];
  /** False where the calculation behind the step has no answer: then no reply passes. */
  readonly possible?: (context: Context) => boolean;
  /** A reply that stops the session, with the cause it gives; where the question names both, a plain yes is none of them. */
  readonly trouble?: { readonly reply: ReplyId; readonly cause: Cause; readonly named?: true };
  /** Later than this counts as no: the session stops with the cause. */
  readonly within?: {
    readonly seconds: (context: Context) => number;
    /** Since when, session time; without it since it is asked. */
    readonly sinceMs?: (context: Context) => number | undefined;
    /** The same where it is asked for the first time; gone back to, since it is asked. */
    readonly firstSinceMs?: (context: Context) => number | undefined;
    readonly cause: Cause;
    /** The rule behind the limit, on the seconds that the reply took; for the record. */
    readonly judge: Judge;
  };
  /** The oil level, on an engine that may have been turned: low is topped up, risen ends the start for good. */
  readonly dipstick?: boolean;
  /** The reply says that the engine stands; it does not count while the bus shows that it turns. */
  readonly standing?: boolean;
  /** The stop words themselves are the reply, so that the real stop is practised. */
  readonly drill?: boolean;
}

/** A gauge is read, and the value held against its limits. */
export interface ReadingStep extends StepBase {
  readonly kind: 'reading';
  readonly quantity: Quantity;
  readonly judge: Judge;
  /** What a value outside its limits leads to: another look, or a stop. */
  readonly outside: 'again' | Cause;
  /** Where another look is all that its own limits ask for: a value that breaks this stops the session. */
  readonly bounds?: { readonly judge: Judge; readonly cause: Cause };
  /** "Not measured" is an answer, and leads back to the step in which it can be measured. */
  readonly notMeasured?: { readonly again: StepId };
  /** That there is nothing to measure it with is an answer; the context says so, and another step stands in for it. */
  readonly without?: ReplyId;
  /** The step that reads it back together with others, before the first gate that it helps to open. */
  readonly readBackIn?: StepId;
  /** Passed over after this long where nobody and no bus tells it: the time that a speed of a sweep is held. */
  readonly passesAfterS?: number;
  /** The bus gives it only while the engine keeps this speed. */
  readonly atRpm?: number;
  /** A value outside its limits may stay so, as an open item: never oil pressure, leaks, heat or speed. */
  readonly mayStayOpen?: boolean;
  /** Only time brings the value inside its limits. */
  readonly byTime?: boolean;
  /** The gauge is read several times, and judged by how the values run. */
  readonly series?: Series;
}

export interface Series {
  /** How many values the bus gives, one after another, and people where nothing else is said. */
  readonly count: number;
  /** What people read instead: the needle's lowest and its highest over half a minute. */
  readonly extremes?: {
    readonly judge: (context: Context, values: readonly SeriesValue[]) => Judgement;
    /** Said of what is heard and not shown: it stops. */
    readonly trouble: { readonly reply: ReplyId; readonly cause: Cause };
  };
  readonly judge: (context: Context, values: readonly SeriesValue[]) => Judgement;
  /** A single value that breaks this stops the session. */
  readonly bounds?: { readonly judge: Judge; readonly cause: Cause };
}

/** Time that has to pass. */
export interface HoldStep extends StepBase {
  readonly kind: 'hold';
  /** What has gone by counts only without a break: after a hold it begins anew. */
  readonly unbroken?: true;
  readonly seconds: (context: Context) => number;
}

/** Every lamp of the profile, against the state expected now. */
export interface LampsStep extends StepBase {
  readonly kind: 'lamps';
  readonly expected: 'keyOn' | 'running';
  readonly lamps: readonly Lamp[];
  /** Replies for the lamps in groups, one for each group; without them lamps are asked one by one. */
  readonly groups: readonly ReplyId[];
  /** What a lamp in the wrong state leads to: another look, or a stop. */
  readonly wrong: 'again' | Cause;
}

/** A list of things gone through by name. */
export interface SensorsStep extends StepBase {
  readonly kind: 'sensors';
  readonly items: readonly { readonly id: string; readonly name: string }[];
  readonly ok: ReplyId;
  /** Replies for the things in groups, one for each group. */
  readonly groups: readonly ReplyId[];
}

/** Bursts of the starter inside its thermal budget, until something is seen. */
export interface CrankStep extends StepBase {
  readonly kind: 'crank';
  readonly needs: readonly Gate[];
  /** What ends the cranking well. */
  readonly until: ReplyId;
  /** What must not come of it, and stops at once, whoever says it. */
  readonly trouble?: { readonly reply: ReplyId; readonly cause: Cause };
  /** What people have to know before the first burst: what is asked of them afterwards, and how soon. */
  readonly announces?: (context: Context) => readonly {
    readonly line: LineId;
    readonly values: PromptValues;
  }[];
  /** Read back after the starter is released; without it the reply counts at once. */
  readonly readBack: boolean;
  /** It has to hold for so long while the starter turns on, counted from when it was first said. */
  readonly heldS?: (context: Context) => number;
  /** Whether so many seconds of cranking are enough for it to have come; what comes earlier is looked at twice. */
  readonly earliest?: Judge;
  /** The longest burst; the starter's thermal budget may make it shorter. */
  readonly burst: (context: Context) => number;
  /** Total cranking after which the step gives up. */
  readonly giveUp: { readonly seconds: (context: Context) => number; readonly cause: Cause };
}

/** Readings or looks repeated until something has happened or the time is up. */
export interface WatchStep extends StepBase {
  readonly kind: 'watch';
  /** What is said when it has happened; read back. */
  readonly ok: ReplyId;
  /** How often the bus is asked again, and people where nothing else is said. */
  readonly everyS: (context: Context) => number;
  /** When people are asked again, of a gauge that cannot have come far meanwhile. */
  readonly peopleEveryS?: (context: Context) => number;
  /** A value read in this step just before counts as a first look. */
  readonly follows?: { readonly step: StepId; readonly line: LineId };
  /** Nothing is accepted before this much time. */
  readonly atLeastS: (context: Context) => number;
  /** Whether the seconds watched so far are enough, where a rule judges them. */
  readonly enough?: (watchedS: number) => Result<Verdict>;
  /** When the time is up it stops with a cause, or goes on and leaves an open item, with what is said then. */
  readonly timeUp: { readonly seconds: (context: Context) => number } & (
    | { readonly cause: Cause }
    | { readonly open: LineId }
  );
  /** What has come takes the open item of this step off the list. */
  readonly settles?: StepId;
  /** Of all codes that the bus shows, those for which it has not happened yet, whatever is said. */
  readonly stillShown?: (context: Context, codes: readonly Code[]) => readonly Code[];
  /** A gauge that is read meanwhile. */
  readonly reading?: {
    readonly quantity: Quantity;
    /** A value that meets this ends the watch. */
    readonly reached: Judge;
    /** The reply counts only where the last value meets this. */
    readonly agrees: Judge;
    /** A value that breaks this stops the session. */
    readonly bounds: Judge;
    readonly cause: Cause;
    /** Whether it cannot have come near its end soon after a value. */
    readonly farFrom: (context: Context, si: number) => boolean;
    /** Said after a value that does neither. */
    readonly outlook: (
      context: Context,
      nowMs: number,
    ) => { readonly line: LineId; readonly values: PromptValues };
  };
}

/** The second person looks at one thing after another; whatever is wrong stops the session. */
export interface InspectStep extends StepBase {
  readonly kind: 'inspect';
  /** Without a cause here it is asked for once all is off. */
  readonly points: readonly { readonly id: InspectPoint; readonly cause: Cause | null }[];
  /** The points from this one on are asked together, with a reply that names each; never leaks. */
  readonly together?: { readonly from: InspectPoint; readonly ok: ReplyId };
}

/** Fault codes, spoken or from the bus, decoded and judged by the profile. */
export interface FaultsStep extends StepBase {
  readonly kind: 'faults';
}

export type Step =
  | ConfirmStep
  | ReadingStep
  | HoldStep
  | LampsStep
  | SensorsStep
  | CrankStep
  | WatchStep
  | InspectStep
  | FaultsStep;
