import type { Emergency, Person } from '../../../machines/vocabulary.ts';
import type { Profile } from '../../profile/schema.ts';
import type {
  BayBrief,
  BayState,
  Device,
  PairingNews,
  Refusal,
  SessionRow,
} from '../../server/protocol/index.ts';
import type { View } from '../../session/view.ts';
import type { KeptChoice } from '../local/choice.ts';
import type { Away } from '../remote/away.ts';
import type { Deaf } from './deaf.ts';
import type { Plot } from './plots.ts';
import type { StopState } from './stop-state.ts';

/** Whether the page is in touch with the session that it shows. */
export interface Link {
  readonly state: 'connecting' | 'connected' | 'broken' | 'refused';
  readonly bay: string;
  /** Why the laptop has refused this device for good; null unless it has. */
  readonly refusal: Refusal | null;
  /** How far this device's clock is ahead of the server's; null before it is known. */
  readonly clockOffsetMs: number | null;
  /** What the laptop has said of this device's pairing; null while there is nothing to say. */
  readonly pairing: PairingNews | null;
}

/** What only a session that is shared through the bay's laptop has. */
export interface BayPart {
  readonly link: Link;
  /** The second person's own clear: asked for now, or given and still good. */
  readonly clear: 'notAsked' | 'needed' | 'given';
  /** The supervisor's name when a hold is asked for. */
  readonly holdAskedBy: string | null;
  /** Another device of the technician leads. */
  readonly follows: boolean;
  /** Of the session in the shop's folder; null before one has begun. */
  readonly session: string | null;
  /** A session ran here that cannot be gone on with, and nobody at its engine has said that it is off and safe. */
  readonly lost: boolean;
  readonly devices: readonly Device[];
  /** What does not work on this device, one sentence each; stands among the view's problems where there is a view. */
  readonly troubles: readonly string[];
  /** The id of this one among them. */
  readonly device: string;
  /** Why what was asked for last was not done; it goes away by itself. */
  readonly refusal: string;
  /** Of the server, ahead of this device's clock; for how long ago something was. */
  readonly serverAheadMs: number;
  /** Names of the engines that a session may begin with. */
  readonly engines: readonly string[];
  /** What the laptop begins with where nothing is chosen; null before it is known. */
  readonly usual: BayState['usual'] | null;
  /** The session may be set aside: everything is off, and somebody has said so. */
  readonly mayBeLeft: boolean;
  /** All bays of the shop, for the supervisor; empty for others. */
  readonly board: readonly BayBrief[];
  /** `performance.now()` at which the board was made. */
  readonly boardAtMs: number;
  /** Whether the laptop is away, and whether this device may go on without it. */
  readonly away: Away;
}

export interface CallForHelp {
  readonly emergency: Emergency;
  readonly wording: string;
}

/** Everything a screen shows. It changes as a whole: the same object as long as nothing has changed. */
export interface FaceState {
  readonly role: Person;
  readonly view: View | null;
  /** Names the question that the view shows, unlike any other: goes back with what answers it. */
  readonly turn: string;
  readonly stop: StopState;
  /** Whether this device hears and speaks, where it should. */
  readonly deaf: Deaf;
  /** `performance.now()` at which the view was made: its timer counts down from here. */
  readonly takenAtMs: number;
  readonly plots: readonly Plot[];
  /** What calls for help, in the wordings of the session. */
  readonly emergencies: readonly CallForHelp[];
  readonly bay: BayPart | null;
}

export interface BayDeeds {
  askHold(): void;
  declineHold(): void;
  takeOver(): void;
  /** Begins a session by what was chosen; an engine from a file is brought to the laptop before. */
  begin(choice: Pick<KeptChoice, 'job' | 'language' | 'profile'>): Promise<void>;
  /**
   * Has the laptop keep an engine of this device: for this bay, or where the supervisor brings it for all of them.
   * @returns the name by which a session begins with it there; rejects with one sentence where it is refused
   */
  bringEngine(profile: Profile): Promise<string>;
  /** Goes on with a session of this bay that is not over. */
  resume(session: string): void;
  /** Leaves the session for another day. */
  setAside(): void;
  /** Says that the engine of the session that was lost is off, and all is safe. */
  madeSafe(): void;
  /** Lets go of a device of this bay, this one or another. */
  letGo(device: string): void;
  /** Takes the line back from another tab of this browser. */
  takeLine(): void;
  /** Makes the pairing of another device good for a working day more. */
  renew(device: string): void;
  /** Sessions of the shop in which this text stands, the newest first; all of them, where it is empty. */
  sessions(find: string): Promise<readonly SessionRow[]>;
  /** Settles with the address of the report of a session, good for one visit. */
  report(session: string): Promise<string>;
}

/** A session as a screen sees it, wherever it runs. */
export interface Face {
  state(): FaceState;
  /** Calls after each change, a few times a second at the most; gives back what ends it. */
  watch(watcher: () => void): () => void;
  /**
   * What was typed or touched, in the wordings that would be spoken.
   * @param turn of the question that was shown: an answer to another one is none
   */
  say(text: string, via: 'keys' | 'touch', turn: string): void;
  stop(): void;
  /** Stops everything, and calls for help. */
  callForHelp(emergency: Emergency): void;
  /** Null where the session runs in this page. */
  readonly bay: BayDeeds | null;
}
