import { languages } from '../../../prompts/index.ts';
import type { EngineHeard } from '../../engineering/engine-sound/ear.ts';
import type { Profile } from '../../profile/schema.ts';
import type { EarLevel } from '../../voice/ports.ts';
import type { Pairing, Pairings } from '../pairing/pairings.ts';
import {
  AWAY_AFTER_MS,
  type Battery,
  type BayBrief,
  type BayState,
  type Command,
  type Deed,
} from '../protocol/index.ts';
import { AwayWatch } from './away-watch.ts';
import { bayState } from './bay-state.ts';
import { briefOf } from './brief.ts';
import { Commands } from './commands/commands.ts';
import { isStop } from './commands/deeds.ts';
import { DoneCommands } from './commands/done-commands.ts';
import { CountingEar } from './counting-ear.ts';
import { Crew, type FoundOffset } from './crew.ts';
import { CurrentRun } from './current-run.ts';
import type { FrameStream } from './frame-stream.ts';
import { mouthsOf } from './mouths.ts';
import { Opening } from './opening.ts';
import type { Run } from './run.ts';
import { ShownState } from './shown-state.ts';
import type { Starter } from './starter.ts';
import { type HowStopped, type StopDone, Stopping } from './stopping.ts';

/** One bay of the shop: its devices, its session, and what all of them are told. */
export class Bay {
  readonly name: string;
  readonly crew: Crew;
  readonly #starter: Starter;
  readonly #pairings: Pairings;
  readonly #done: DoneCommands;
  readonly #current: CurrentRun;
  readonly #shown: ShownState;
  readonly #stopping: Stopping;
  readonly #opening: Opening;
  readonly #commands: Commands;
  readonly #away: AwayWatch;
  readonly #engineEar: CountingEar;

  /** @param awayMs after which a device that leads and has left is not waited for beside an engine that turns */
  constructor(name: string, pairings: Pairings, starter: Starter, awayMs = AWAY_AFTER_MS) {
    this.name = name;
    this.#starter = starter;
    const crew = new Crew(name, pairings);
    const done = new DoneCommands();
    this.#done = done;
    this.#pairings = pairings;
    const current = new CurrentRun(run => this.#followed(run));
    this.crew = crew;
    this.#current = current;
    const shown = new ShownState(
      () => this.#state(),
      () => this.sessionMs ?? 0,
    );
    const showNow = () => shown.showNow();
    const isBeginning = () => this.#opening.isUnderWay;
    const stopping = new Stopping({ current, crew, done, isBeginning, showNow });
    const mouths = mouthsOf(shown.stream, current, crew);
    const opening = new Opening({ bay: name, starter, mouths, current, done, stopping, showNow });
    this.#shown = shown;
    this.#stopping = stopping;
    this.#opening = opening;
    this.#commands = new Commands({ bay: name, pairings, crew, current, opening, stopping, shown, done });
    this.#away = new AwayWatch(crew, current, showNow, awayMs);
    this.#engineEar = new CountingEar(device => crew.place(device));
  }

  /** What the faces are told. */
  get stream(): FrameStream {
    return this.#shown.stream;
  }

  /**
   * Goes on with the session that broke off when the server ended, if there is one.
   * @throws whatever keeps it from being gone on with; the bay is free then
   */
  resume(): Promise<void> {
    return this.#opening.resume();
  }

  /** The session that is not over, by its id. */
  get goingOn(): string | null {
    return this.#current.goingOn?.id ?? null;
  }

  /** A session goes on here, or is being begun. */
  get isOpen(): boolean {
    return this.#opening.isUnderWay || this.goingOn !== null;
  }

  /** Some lines of the record of the session that is run here, from this one on; null when it has another id. */
  lines(id: string, from: number): readonly string[] | null {
    const { run } = this.#current;
    return run?.id === id ? run.lines(from) : null;
  }

  get sessionMs(): number | null {
    return this.#current.sessionMs;
  }

  came(pairing: Pairing): void {
    this.crew.came(pairing);
    this.#done.keepOnly(device => this.#pairings.knows(device));
    this.#sourceIs();
    this.show();
  }

  left(pairing: Pairing): void {
    this.crew.left(pairing);
    this.#away.left(pairing);
    this.#sourceIs();
    this.show();
  }

  /** Nothing comes back over the open line of a device, or something does again. */
  setQuiet(pairing: Pairing, quiet: boolean): void {
    this.crew.setQuiet(pairing, quiet);
    if (quiet) this.#away.quiet(pairing);
    this.show();
  }

  noteBattery(pairing: Pairing, battery: Battery): void {
    this.crew.noteBattery(pairing, battery);
    this.show();
  }

  noteOffset(pairing: Pairing, offset: FoundOffset): void {
    this.crew.noteOffset(pairing.device, offset);
    this.show();
  }

  /** The owner's device has said this sentence; nobody else's word about it counts. */
  spoken(pairing: Pairing, seq: number): void {
    if (this.crew.isOwner(pairing)) this.#current.run?.speech.voice.spoken(seq);
  }

  /** A device says whether it hears at all. */
  setListening(pairing: Pairing, listens: boolean): void {
    this.crew.setListening(pairing, listens);
    this.#sourceIs();
    this.show();
  }

  /** What the owner's device hears of the bay: whether a voice can be trusted there. */
  level(level: EarLevel): void {
    this.#current.run?.session.level(level);
  }

  /** What a device hears of the engine of this session: one device counts, and nothing is taken from the others. */
  hearsEngine({ device, name }: Pairing, session: string, heard: EngineHeard): void {
    const { run } = this.#current;
    if (run?.id !== session || !this.#engineEar.counts(device, run.clock.nowMs())) return;
    run.engineEar.take(heard, name);
  }

  /** In whose voice the stop before was said. */
  voiceOfStop({ device }: Pairing, voice: readonly number[]): void {
    this.#current.run?.voices.hears({ voice: Float32Array.from(voice), stopped: true }, device);
  }

  /** Whether a deed is a stop, whichever way it was said. */
  isStop(deed: Deed): boolean {
    const { run } = this.#current;
    const known = run ? [run.session.parts.language] : Object.values(languages);
    return known.some(language => isStop(deed, language));
  }

  /** Stops the session, in any state and for whoever asks: it is stopped, and all faces are told, when this returns. */
  stop(by: Pairing, id: string, how: HowStopped = {}): StopDone {
    return this.#stopping.stop(by, id, how);
  }

  /** Something broke that this bay hangs on: what goes on in it is stopped, and all faces are told why. */
  fails(error: unknown): void {
    this.#opening.fails(error);
    try {
      this.#current.goingOn?.session.fails(error);
    } finally {
      this.#shown.showNow();
    }
  }

  /** Lets go of a device of this bay. @throws Refused when this bay has none such */
  letGo(device: string): Promise<void> {
    return this.#commands.letGo(device);
  }

  /**
   * Does what a device asks for, once, and returns when it is on the record. A stop goes by `stop`.
   * @returns true when it had been done before
   * @throws Refused, with nothing changed
   */
  perform(by: Pairing, command: Command): Promise<boolean> {
    return this.#commands.perform(by, command);
  }

  /** Tells the faces what they do not know yet, once for all that happens in this turn of the program. */
  show(): void {
    this.#shown.show();
  }

  /**
   * Takes in an engine profile for sessions of this bay.
   * @returns the name by which one begins with it
   */
  bring(profile: Profile): string {
    const name = this.#starter.bring(this.name, profile);
    this.show();
    return name;
  }

  /** Settles when the profiles that were brought are on the disk. */
  enginesKept(): Promise<void> {
    return this.#starter.enginesKept();
  }

  /** How it stands here, in a line. */
  brief(): BayBrief {
    return briefOf(this.#state(), this.#current.run, this.sessionMs ?? 0);
  }

  async close(): Promise<void> {
    this.#away.close();
    await this.#current.run?.close();
  }

  #followed(run: Run): void {
    run.session.watch(() => this.#stopping.look(run.session.moment));
    run.viewer.watch(() => this.show());
    run.session.watch(happening => {
      // Ahead of the answer to what is in memory only.
      if (happening?.kind === 'notKept') this.#shown.showNow();
    });
    this.#sourceIs();
    this.show();
  }

  #sourceIs(): void {
    this.#current.listensWith(this.crew.source);
  }

  #state(): BayState {
    return bayState(this.name, { current: this.#current, crew: this.crew, starter: this.#starter });
  }
}
