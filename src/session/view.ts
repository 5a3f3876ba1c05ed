import type { Gate, Person } from '../../machines/vocabulary.ts';

/** Everything a face shows, made from the session's state; a face adds nothing and decides nothing. */
export interface View {
  readonly profileName: string;
  /** The engine is invented: said on every face. */
  readonly invented: boolean;
  /** A model stands in for the engine: said first of all. */
  readonly rehearsal?: true;
  /** How this engine is switched off, as a sentence without its full stop; absent where it is by the key. */
  readonly switchedOff?: string;
  readonly state: 'working' | 'held' | 'stopped' | 'over';
  /** It stands still because a stop word was tried out: nothing is wrong. */
  readonly drill?: boolean;
  /** One of the words that stop everything, while one is to be tried out. */
  readonly emergencyWord?: string;
  /** Name of the machine's state, e.g. `fill.coolantFilled.asking`. */
  readonly key: string;
  readonly phase: string;
  readonly phaseNumber: number;
  readonly phaseCount: number;
  readonly title: string;
  /** The sentence that waits for a reply, for the eye. */
  readonly prompt: string;
  /** What was answered, refused or judged since the question was put, whole; absent where there is nothing. */
  readonly remark?: string;
  /** What was called out and has to be seen at once, until it is done: the newest first. Absent where there is nothing. */
  readonly callOuts?: readonly string[];
  /** What comes to the second person next, and in how many steps: 1 is the next one. Absent where nothing does. */
  readonly coming?: readonly { readonly title: string; readonly away: number }[];
  readonly addressed: Person;
  readonly addressedName: string;
  /** What the engine does, so that the face can warn; `unsure`: stopped, and nobody has confirmed yet that it stands. */
  readonly engine: 'off' | 'cranking' | 'running' | 'unsure';
  /** Wordings that may be said now, the one asked for first; then the always-on words that do something. */
  readonly choices: readonly string[];
  readonly controls: readonly string[];
  /** A number is awaited: its unit and range, for the eye. */
  readonly number: {
    readonly name: string;
    readonly unit: string;
    readonly min: number;
    readonly max: number;
  } | null;
  /** What is being timed: a hold, a burst, or the time for an answer. */
  readonly timer: {
    readonly title: string;
    readonly totalMs: number;
    readonly leftMs: number;
    readonly held: boolean;
  } | null;
  readonly readings: readonly ReadingView[];
  readonly bus?: BusView;
  readonly engineEar?: EngineEarView;
  readonly gates: readonly { readonly gate: Gate; readonly name: string; readonly met: boolean }[];
  readonly faults: readonly string[];
  readonly openItems: readonly string[];
  readonly hearing: HearingView;
  readonly log: readonly LogLine[];
  /** Sentences about what does not work: no microphone, a full disk. Newest last. */
  readonly problems: readonly string[];
  readonly outcome: 'signedOff' | 'ended' | null;
  /** In a rehearsal: what there is to see at the engine, in a few lines; absent at a real one. */
  readonly sights?: readonly string[];
}

/** `gone`: unplugged, refused or over. */
export type BusState = 'notHeard' | 'alive' | 'silent' | 'gone';

/** What the vehicle bus shows; absent where there is none. */
export interface BusView {
  /** What is read: "candump on can0". */
  readonly source: string;
  readonly state: BusState;
  /** Everything that the profile says this engine sends; null while there is no fresh, good value. */
  readonly values: readonly { readonly name: string; readonly value: string | null }[];
}

/** What the microphone hears of the engine; absent where nothing listens for it. */
export interface EngineEarView {
  /** Null while no speed is sure: that says nothing about whether it turns. */
  readonly speed: string | null;
  /** A speed for each of the last seconds, rpm, oldest first; null where none was sure. */
  readonly trace: readonly (number | null)[];
  /** Swing of an idle that hunts, and in what time: "30 rpm, 4.2 s". */
  readonly hunting?: string;
  /** Whose device hears it, where several might. */
  readonly microphone?: string;
  /** How the sound has changed against the first minute of this engine, by band; shown, not judged. */
  readonly change?: string;
}

export interface ReadingView {
  readonly name: string;
  readonly value: string;
  readonly limits: string;
  readonly met: boolean;
}

export interface HearingView {
  /** What listens: "microphone", "recording.wav", "keys only". */
  readonly source: string;
  readonly levelDbfs: number | null;
  readonly clipping: boolean;
  readonly speech: boolean;
  readonly speaking: boolean;
  /** The last thing heard, and whether it counted. */
  readonly last: { readonly text: string; readonly counted: boolean; readonly by: Person } | null;
}

export interface LogLine {
  /** Session time, mm:ss. */
  readonly time: string;
  readonly who: string;
  readonly text: string;
}
