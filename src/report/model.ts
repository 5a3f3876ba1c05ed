import type { JobCard, Said } from '../../machines/context.ts';
import type { EngineState } from '../../machines/steps.ts';
import type { Person, Quantity } from '../../machines/vocabulary.ts';
import type { LanguageCode } from '../../prompts/types.ts';
import type { Profile } from '../profile/schema.ts';
import type { Fault, Remark, SignatureFinding } from '../record/index.ts';
import type { VoiceSight } from '../record/vocabulary/event.ts';
import type { ReplayFault } from './replay.ts';

/** Whether the record can be believed, and how far. */
export interface Trust {
  /** The chain holds from the first line to the last. */
  readonly sound: boolean;
  /** What is wrong; only when not sound, and absent when there is no whole entry. */
  readonly fault?: Fault;
  /** Entries that the report was made from. */
  readonly entries: number;
  /** Hash of the last of them; absent when there is none. */
  readonly lastHash?: string;
  readonly remarks: readonly Remark[];
  /** The procedure, given the recorded events, does not come to what the record says. */
  readonly replayFault?: ReplayFault;
  /** Numbers of entries that could not be understood. */
  readonly notUnderstood: readonly number[];
  readonly signatures: readonly SignatureState[];
}

/** Whether all of it was understood, and its events, carried out once more, lead to what it says. */
export const isConfirmed = ({ replayFault, notUnderstood }: Trust): boolean =>
  replayFault === undefined && notUnderstood.length === 0;

/** A detached signature, and whether it belongs to this record. */
export interface SignatureState {
  readonly role: string;
  readonly keyId: string;
  readonly at: string;
  readonly valid: boolean;
  readonly sentence: string;
  readonly finding?: SignatureFinding;
}

export type Outcome =
  | { readonly kind: 'signedOff' }
  | { readonly kind: 'ended' }
  /** The record stops in mid-session. */
  | { readonly kind: 'open'; readonly stopped: boolean }
  | { readonly kind: 'nothing' };

export interface Span {
  readonly fromMs: number;
  readonly toMs: number;
}

/** A stretch of time in one phase; a phase that is gone back to has several. */
export interface PhaseSpan extends Span {
  readonly phase: string;
}

export interface EngineSpan extends Span {
  readonly engine: Exclude<EngineState, 'off'>;
}

export interface TimeLine {
  readonly phases: readonly PhaseSpan[];
  /** Stopped, from the call to the step after it. */
  readonly stops: readonly (Span & { readonly drill: boolean })[];
  readonly held: readonly Span[];
  readonly restartsMs: readonly number[];
  /** Null when the record cannot be replayed: then nobody can say when the engine ran. */
  readonly engine: readonly EngineSpan[] | null;
  readonly endMs: number;
}

export interface Limits {
  readonly min?: number;
  readonly max?: number;
}

export interface ReadingVerdict extends Limits {
  readonly met: boolean;
  readonly margin?: number;
  /** What was held against the limits, where that is not the value itself; in the unit that it names. */
  readonly of?: { readonly value: number; readonly unit: string };
  readonly rule?: string;
  readonly source?: string;
  /** Why it is not met, where no limit says so. */
  readonly why?: string;
}

/** One value of a gauge. Values in the SI unit named. */
export interface Reading {
  readonly seq: number;
  readonly timeMs: number;
  readonly at: string;
  readonly step: string;
  readonly phase: string;
  readonly quantity: string;
  readonly si: number;
  readonly unit: string;
  /** Spoken and read back, by itself over the bus, or heard by the microphone. */
  readonly source: 'confirmed' | 'bus' | 'ear';
  /** Absent for what nobody judged: the values of a series before its last, and those of the bus. */
  readonly verdict?: ReadingVerdict;
}

/** A step that was passed, the last time it was. */
export interface PassedStep {
  readonly step: string;
  readonly timeMs: number;
  readonly by: string;
  readonly misheard: number;
  /** Taken back by a stop or by going back, and not passed again. */
  readonly reopened: boolean;
}

export interface GateStory {
  /**
   * The gate's id; null for readings that open none: those that hold the work up until they are right, and figures
   * that are only calculated with.
   */
  readonly gate: string | null;
  readonly holdsUp?: boolean;
  readonly met: boolean;
  readonly metAtMs?: number;
  readonly by?: string;
  /** Steps without a reading that count as done. */
  readonly confirmed: readonly string[];
  readonly missing: readonly string[];
  readonly readings: readonly JudgedStep[];
}

/** The readings of one step: the last one decides. */
export interface JudgedStep {
  readonly step: string;
  readonly last: Reading;
  /** Readings outside their limits before the last, oldest first. */
  readonly failedBefore: readonly Reading[];
  readonly count: number;
  readonly lowestSi: number;
  readonly highestSi: number;
}

export interface HoldStory extends Span {
  readonly step: string;
  readonly kind: 'hold' | 'rest' | 'burst' | 'watch';
  readonly plannedMs: number;
  readonly pausedMs: number;
  /** Ran to its end (a hold, a rest), or within its limit (a burst, a watch). */
  readonly kept: boolean;
}

export interface FaultStory {
  readonly spn: number;
  readonly fmi: number;
  readonly meaning: string;
  readonly because: string;
  readonly told: readonly {
    readonly timeMs: number;
    readonly step: string;
    readonly decision: string;
    readonly accepted?: string;
  }[];
  readonly watchPassedMs?: number;
  /** Null when the record cannot be replayed. */
  readonly presentAtEnd: boolean | null;
}

/** The reading that called a stop. */
export interface StopReading {
  readonly quantity: string;
  readonly si: number;
  readonly unit: string;
  readonly min?: number;
  readonly max?: number;
}

export interface StopStory {
  readonly timeMs: number;
  readonly step: string;
  readonly by: string;
  readonly via: string;
  /** What called it: the stop words, a reply, a value, a time that was up. */
  readonly trigger: string;
  /** The paired device it came from. */
  readonly device?: string;
  /** The cause that the session itself gave it, before anybody was asked. */
  readonly found?: string;
  readonly reading?: StopReading;
  readonly drill: boolean;
  readonly cause: string | null;
  readonly again: readonly string[];
  readonly wentOnMs?: number;
}

export interface SkipStory {
  readonly timeMs: number;
  readonly step: string;
  readonly reason: string;
  readonly by: string;
}

export interface MisheardStory {
  readonly timeMs: number;
  readonly step: string;
  readonly text: string;
  readonly reason: string;
  /** What counted afterwards in the same step, and when. */
  readonly repaired?: { readonly text: string; readonly timeMs: number };
}

/** A spoken answer: whom it was asked of, and whose voice it was in, where that was sure. */
export interface SpokenStory {
  readonly timeMs: number;
  readonly step: string;
  readonly text: string;
  readonly by: Person;
  readonly voice?: VoiceSight['of'];
  /** Not taken, because of the voice. */
  readonly refused: boolean;
}

/** What the microphone heard of the engine. */
export interface EarStory {
  readonly timeMs: number;
  readonly happened: string;
  readonly rpm?: number;
  readonly hunting?: { readonly amplitudeRpm: number; readonly periodS: number };
  readonly change?: { readonly fromHz: number; readonly toHz: number; readonly db: number };
  /** Whose device it was, where there were several. */
  readonly microphone?: string;
}

export interface VoicesStory {
  readonly spoken: readonly SpokenStory[];
}

/** What could hardly be true and was questioned: a value, or a reply that came too early. In SI. */
export interface DoubtStory extends Limits {
  readonly timeMs: number;
  readonly step: string;
  readonly quantity?: string;
  readonly reply?: string;
  readonly si?: number;
  readonly unit: string;
  /** Who read it too, so that it was taken all the same. */
  readonly vouchedBy?: string;
}

/** Where a figure stood among the shop's earlier starts of this engine. */
interface BesideStory {
  readonly timeMs: number;
  readonly step: string;
  /** In SI. */
  readonly value: number;
  readonly unit: string;
  readonly others: number;
  readonly below: number;
  readonly above: number;
  readonly median: number;
  readonly min: number;
  readonly max: number;
  readonly within: boolean;
}

/** How the supervisor signed in the record. */
export interface SigningStory {
  readonly timeMs: number;
  /** Their own paired device; absent where the words came from somebody else's, or from the one that leads. */
  readonly device?: string;
}

export interface CautionStory {
  readonly timeMs: number;
  readonly hazard: boolean;
  readonly text: string;
  readonly times: number;
}

export type OpenItem =
  | { readonly kind: 'gate'; readonly gate: string }
  | { readonly kind: 'skip'; readonly step: string; readonly reason: string }
  | { readonly kind: 'fault'; readonly spn: number; readonly fmi: number; readonly accepted: string }
  | { readonly kind: 'reopened'; readonly step: string }
  /** Not as it should be, noted, and gone on with: a value in SI, or what was found. */
  | {
      readonly kind: 'left';
      readonly step: string;
      readonly quantity?: Quantity | undefined;
      readonly si?: number | undefined;
      readonly finding?: string | undefined;
    }
  /** What ended the start for good: the line that said so. */
  | { readonly kind: 'barred'; readonly line: string };

interface Told {
  readonly timeMs: number;
  readonly text: string;
}

/** A prompt with the figures calculated for it. */
export interface ComputedStory {
  readonly timeMs: number;
  readonly step: string;
  readonly said: Said;
}

/** Everything a report says, in SI and ids; words and units come when it is laid out. */
export interface ReportModel {
  readonly trust: Trust;
  /** What the session was held in; English where the record does not say. */
  readonly language: LanguageCode;
  /** Null when the record was not begun by a session of this version. */
  readonly job: JobCard | null;
  readonly profile: Profile | null;
  readonly startedAt: string | null;
  readonly endedAt: string | null;
  readonly durationMs: number;
  readonly outcome: Outcome;
  /** The phase in which the session ended, while it was not signed off. */
  readonly lastPhase: string;
  readonly timeLine: TimeLine;
  readonly gates: readonly GateStory[];
  readonly readings: readonly Reading[];
  readonly holds: readonly HoldStory[] | null;
  readonly faults: readonly FaultStory[];
  readonly stops: readonly StopStory[];
  readonly skips: readonly SkipStory[];
  readonly misheard: readonly MisheardStory[];
  readonly doubts: readonly DoubtStory[];
  readonly besideOthers: readonly BesideStory[];
  /** A model stood in for the engine. */
  readonly rehearsal: boolean;
  readonly ear: readonly EarStory[];
  /** Null where voices were not told apart. */
  readonly voices: VoicesStory | null;
  /** Null where nobody signed. */
  readonly signing: SigningStory | null;
  readonly cautions: readonly CautionStory[];
  readonly computed: readonly ComputedStory[];
  readonly openItems: readonly OpenItem[];
  readonly retorque: readonly { readonly name: string; readonly done: boolean }[];
  readonly problems: readonly Told[];
  readonly refusals: readonly (Told & { readonly unmet: readonly string[] })[];
  /** Calls for help that were not carried out: whose, for what, and why not. */
  readonly notCarriedOut: readonly {
    readonly timeMs: number;
    readonly device: string;
    readonly role: string;
    readonly cause: string;
    readonly why: string;
  }[];
}
