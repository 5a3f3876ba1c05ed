import { isKnownEmergency } from '../../../machines/emergency.ts';
import { controlsOf, type Moment, offerOf } from '../../../machines/moment.ts';
import { languages } from '../../../prompts/index.ts';
import type { EngineHeard } from '../../engineering/engine-sound/ear.ts';
import type { Profile } from '../../profile/schema.ts';
import type { NotCarriedOut } from '../../record/vocabulary/index.ts';
import type { EarLevel } from '../../voice/ports.ts';
import { PAIRED_FOR_MS, type Pairing, type Pairings } from '../pairing/pairings.ts';
import {
  AWAY_AFTER_MS,
  type Battery,
  type BayBrief,
  type BayState,
  type Command,
  type Deed,
  type LogPage,
  type StopAnswer,
} from '../protocol/index.ts';
import { Refused } from '../refused.ts';
import { forbidden, mayCallForHelp, mayNotLetGo, mayNotRenew } from './authority.ts';
import { briefOf } from './brief.ts';
import { CountingEar } from './counting-ear.ts';
import { Crew, type FoundOffset } from './crew.ts';
import { isStop, planned, running, speaksFor } from './deeds.ts';
import { DoneCommands } from './done-commands.ts';
import { FrameStream } from './frame-stream.ts';
import { clearOf, Turns } from './question.ts';
import type { Mouths } from './remote-voice.ts';
import type { Run } from './run.ts';
import type { Resumed, Starter } from './starter.ts';
import { StopBook } from './stop-book.ts';

/** As long as a page takes to be loaded anew. */
const GRACE_MS = 4_000;

/** By what way a stop came, and what it calls for help for. */
type HowStopped = Pick<Extract<Deed, { do: 'stop' }>, 'via' | 'cause'>;

/** One bay of the shop: its devices, its session, and what all of them are told. */
export class Bay {
  readonly name: string;
  readonly crew: Crew;
  readonly stream: FrameStream;
  readonly #pairings: Pairings;
  readonly #starter: Starter;
  readonly #done = new DoneCommands();
  readonly #stops = new StopBook();
  readonly #engineEar = new CountingEar(device => this.crew.place(device));
  /** Stops that came while a session was being begun. */
  #stopsToCome: { readonly by: Pairing; readonly id: string; readonly how: HowStopped }[] = [];
  #run: Run | null = null;
  #turns = new Turns('', () => 0);
  /** Questions whose answer is being carried out. */
  readonly #answered = new Set<string>();
  #holdAsked: BayState['holdAsked'] = null;
  #showing = false;
  readonly #awayMs: number;
  #leaderAway: NodeJS.Timeout | null = null;
  #starting = false;

  /** @param awayMs after which a device that leads and has left is not waited for beside an engine that turns */
  constructor(name: string, pairings: Pairings, starter: Starter, awayMs = AWAY_AFTER_MS) {
    this.name = name;
    this.#pairings = pairings;
    this.#starter = starter;
    this.#awayMs = awayMs;
    this.crew = new Crew(name, pairings);
    this.stream = new FrameStream(this.#state());
  }

  /** Goes on with the session that broke off when the server ended, if there is one. */
  async resume(): Promise<void> {
    const resumed = await this.#starter.resume(this.name, this.#mouths());
    if (!resumed) return;
    this.#take(resumed);
    await resumed.run.session.begin();
  }

  /** The session that is not over, by its id. */
  get goingOn(): string | null {
    return this.#run && !this.#run.isOver ? this.#run.id : null;
  }

  /** A session goes on here, or is being begun. */
  get isOpen(): boolean {
    return this.#starting || this.goingOn !== null;
  }

  /** Some entries of the session that is run here, from this one on; null when it has another id. */
  entries(id: string, from: number): LogPage['entries'] | null {
    return this.#run?.id === id ? this.#run.entries(from) : null;
  }

  get sessionMs(): number | null {
    return this.#run?.clock.nowMs() ?? null;
  }

  came(pairing: Pairing): void {
    this.crew.came(pairing);
    this.#sourceIs();
    this.show();
  }

  left(pairing: Pairing): void {
    this.crew.left(pairing);
    if (this.crew.isOwner(pairing) && !this.crew.attended()) this.#leaderLeft();
    this.#sourceIs();
    this.show();
    // A page that is loaded anew is back sooner.
    setTimeout(() => this.#tellIfAway(pairing), GRACE_MS).unref();
  }

  /** Nothing comes back over the open line of a device, or something does again. */
  setQuiet(pairing: Pairing, quiet: boolean): void {
    this.crew.setQuiet(pairing, quiet);
    if (quiet) this.#tellIfAway(pairing);
    this.show();
  }

  noteBattery(pairing: Pairing, battery: Battery): void {
    this.crew.noteBattery(pairing, battery);
    this.show();
  }

  /** Whoever lost the second person's device has to know at once: their stop reaches nobody. */
  #tellIfAway({ role }: Pairing): void {
    const run = this.#run;
    if (role !== 'second' || !run || run.isOver || !this.crew.isAway(role)) return;
    // Where seconds count, and in a stop, the tool's own voice would be in the way.
    const { moment } = run.session;
    if (!controlsOf(moment).includes('hold')) return;
    if (moment.hasTag('running')) run.session.callOut('secondGoneRunning');
    else run.session.mention('secondGone');
  }

  /** Nobody leads: what would go on unheard beside an engine that turns is stopped. */
  #leaderLeft(): void {
    if (this.#leaderAway) clearTimeout(this.#leaderAway);
    this.#leaderAway = setTimeout(() => {
      this.#leaderAway = null;
      const run = this.#run;
      if (this.crew.attended() || !run || run.isOver || standsStill(run.session.moment)) return;
      if (run.viewer.view().engine === 'off') return;
      run.session.report('The device that leads is away: the session was stopped. Key off.');
      run.session.receive({ type: 'stop' }, 'technician', 'tool');
      this.#showNow();
    }, this.#awayMs);
  }

  noteOffset(pairing: Pairing, offset: FoundOffset): void {
    this.crew.noteOffset(pairing.device, offset);
    this.show();
  }

  /** The owner's device has said this sentence; nobody else's word about it counts. */
  spoken(pairing: Pairing, seq: number): void {
    if (this.crew.isOwner(pairing)) this.#run?.speech.voice.spoken(seq);
  }

  /** A device says whether it hears at all. */
  setListening(pairing: Pairing, listens: boolean): void {
    this.crew.setListening(pairing, listens);
    this.#sourceIs();
    this.show();
  }

  /** What the owner's device hears of the bay: whether a voice can be trusted there. */
  level(level: EarLevel): void {
    this.#run?.session.level(level);
  }

  /** What a device hears of the engine of this session: one device counts, and nothing is taken from the others. */
  hearsEngine({ device, name }: Pairing, session: string, heard: EngineHeard): void {
    const run = this.#run;
    if (run?.id !== session || !this.#engineEar.counts(device, run.clock.nowMs())) return;
    run.engineEar.take(heard, name);
  }

  /** In whose voice the stop before was said. */
  voiceOfStop({ device }: Pairing, voice: readonly number[]): void {
    this.#run?.voices.hears({ voice: Float32Array.from(voice), stopped: true }, device);
  }

  /** Whether a deed is a stop, whichever way it was said. */
  isStop(deed: Deed): boolean {
    const known = this.#run ? [this.#run.session.parts.language] : Object.values(languages);
    return known.some(language => isStop(deed, language)) && !this.#isEcho(deed);
  }

  /** A call for help that a microphone heard while the tool said that very word: its own voice. */
  #isEcho(deed: Deed): boolean {
    if (deed.do !== 'stop' || deed.via !== 'voice' || deed.cause === undefined) return false;
    return this.goingOn !== null && this.#run?.session.saysItself(deed.cause) === true;
  }

  /**
   * Stops the session, in any state and for whoever asks. It is stopped, and all faces are told, when this
   * returns; the record follows. A stop while a session is being begun counts as soon as there is one. What calls
   * for help is called out in a session that is stopped already, too.
   */
  stop(
    by: Pairing,
    id: string,
    how: HowStopped = {},
  ): { readonly stop: StopAnswer; readonly again: boolean } {
    const run = this.#run;
    const { via = 'touch' } = how;
    const cause = mayCallForHelp(by.role) ? how.cause : undefined;
    if (this.#starting && (!run || run.isOver)) {
      const known = this.#stopsToCome.some(each => each.by.device === by.device && each.how.cause === cause);
      const again = !this.#stops.take(by.device) && (cause === undefined || known);
      if (!again) this.#stopsToCome.push({ by, id, how });
      return { stop: 'stopped', again };
    }
    if (!run || run.isOver) return { stop: 'nothingRuns', again: false };
    const { moment } = run.session;
    // The second person may try their word out at the device at which the technician just did.
    const isAsked = offerOf(moment).awaits === 'drill';
    const isNews = isAsked || (cause !== undefined && !isKnownEmergency(cause, moment.context.stop));
    if (!mayCallForHelp(by.role)) this.#notCarriedOut(by, id, how, 'notAtEngine');
    const isSame =
      moment.matches('stopped') &&
      (this.#done.find(by.device, id) !== undefined || (!isNews && !this.#stops.take(by.device)));
    if (isSame) return { stop: 'stopped', again: true };
    this.#record(by, id, { do: 'stop' });
    const who = via === 'voice' ? speaksFor(by, { run, crew: this.crew }) : by.role;
    run.session.receive({ type: 'stop', ...(cause && { cause }) }, who, via);
    this.#stops.take(by.device);
    this.#done.add(by.device, id, Promise.resolve());
    this.#showNow();
    return { stop: 'stopped', again: false };
  }

  /** Lets go of a device of this bay. @throws Refused when this bay has none such */
  async letGo(device: string): Promise<void> {
    if (!this.#pairings.ofBay(this.name).some(pairing => pairing.device === device))
      throw new Refused('notFound', 'No such device is paired in this bay.');
    this.#done.forget(device);
    await this.#pairings.forget(device);
    this.show();
  }

  /**
   * Does what a device asks for, once, and returns when it is on the record. A stop goes by `stop`.
   * @returns true when it had been done before
   * @throws Refused, with nothing changed
   */
  async perform(by: Pairing, { id, deed }: Command): Promise<boolean> {
    const before = this.#done.find(by.device, id);
    if (before) {
      await before;
      return true;
    }
    this.crew.noteWord(by);
    const refusal = forbidden({ role: by.role, owner: this.crew.isOwner(by) }, deed);
    if (refusal) throw new Refused(refusal.code, refusal.sentence);
    const doing = this.#carryOut(by, id, deed);
    this.#done.add(by.device, id, doing);
    try {
      await doing;
    } catch (error) {
      this.#done.drop(by.device, id);
      throw error;
    }
    return false;
  }

  /** Tells the faces what they do not know yet, once for all that happens in this turn of the program. */
  show(): void {
    if (this.#showing) return;
    this.#showing = true;
    setImmediate(() => {
      this.#showing = false;
      this.#showNow();
    });
  }

  #showNow(): void {
    this.stream.show(this.#state(), this.sessionMs ?? 0);
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
    return briefOf(this.#state(), this.#run, this.sessionMs ?? 0);
  }

  async close(): Promise<void> {
    if (this.#leaderAway) clearTimeout(this.#leaderAway);
    await this.#run?.close();
  }

  async #carryOut(by: Pairing, id: string, deed: Deed): Promise<void> {
    switch (deed.do) {
      case 'begin':
        await this.#open(async () =>
          this.#follow(await this.#starter.start(this.name, deed, this.#mouths())),
        );
        this.#record(by, id, deed);
        break;
      case 'resume':
        await this.#open(async () =>
          this.#take(await this.#starter.goOn(this.name, deed.session, this.#mouths())),
        );
        this.#record(by, id, deed);
        break;
      case 'setAside':
        await this.#setAside(by, id, deed);
        break;
      case 'takeOver':
        this.crew.takeOver(by);
        this.#record(by, id, deed);
        this.#sourceIs();
        break;
      case 'forget':
        this.#checkLettingGo(by, deed.device);
        this.#record(by, id, deed);
        await this.letGo(deed.device);
        break;
      case 'renew': {
        const device = this.#pairings.ofBay(this.name).find(pairing => pairing.device === deed.device);
        if (!device) throw new Refused('notFound', 'No such device is paired in this bay.');
        const refusal = mayNotRenew(
          { role: by.role, owner: this.crew.isOwner(by) },
          { own: deed.device === by.device },
        );
        if (refusal) throw new Refused(refusal.code, refusal.sentence);
        this.#record(by, id, deed);
        await this.#pairings.renew(device, PAIRED_FOR_MS);
        break;
      }
      case 'askHold': {
        const { session, clock } = running(this.#run);
        if (standsStill(session.moment))
          throw new Refused('notNow', 'The session stands still already; nothing is left to be held.');
        this.#record(by, id, deed);
        this.#holdAsked = { by: by.name, atSessionMs: clock.nowMs() };
        session.mention('holdAsked');
        break;
      }
      case 'declineHold':
        this.#record(by, id, deed);
        this.#holdAsked = null;
        break;
      case 'stop':
        if (this.#isEcho(deed)) this.#notCarriedOut(by, id, deed, 'toolSpoke');
        else this.stop(by, id, deed);
        break;
      default: {
        const turn = this.#turn;
        // On a slow disk the answer before may not have had its effect yet: this one would be to what comes after.
        const scene = {
          run: running(this.#run),
          crew: this.crew,
          turn: this.#answered.has(turn) ? null : turn,
        };
        const carryOut = planned(deed, by, scene);
        if (deed.do === 'heard') scene.run.voices.hears(voiceIn(deed), by.device);
        // Before its effects: after a power loss between the two it is not done, and never twice.
        this.#record(by, id, deed);
        carryOut();
        // Whatever turn it was said for: what counts at any turn may change what is asked, too.
        await this.#answering(turn, scene.run);
      }
    }
    this.show();
    await this.#run?.session.settled();
  }

  /** Names the question that is asked at this moment, whether anybody has been told of it or not. */
  get #turn(): string {
    if (this.#run) this.#turns.look(this.#run.session.moment);
    return this.#turns.name;
  }

  /** Until it is on the disk and has had its effect, an answer is the only one to its question. */
  async #answering(turn: string, { session }: Run): Promise<void> {
    this.#answered.add(turn);
    this.show();
    try {
      await session.settled();
    } finally {
      this.#answered.delete(turn);
    }
  }

  #record({ device, name, role }: Pairing, id: string, deed: Deed): void {
    if (this.#run && !this.#run.isOver)
      this.#run.session.keep('command', { id, device, name, role, do: deed.do });
  }

  /** A call for help that nothing follows from stands on the record all the same, once for each stop. */
  #notCarriedOut(
    { device, name, role }: Pairing,
    id: string,
    { cause }: HowStopped,
    why: NotCarriedOut,
  ): void {
    if (cause === undefined || !this.#stops.take(`${device} ${cause} ${why}`)) return;
    this.#run?.session.keep('notCarriedOut', { id, device, name, role, do: 'stop', cause, why });
  }

  /** @throws Refused also for a device of another bay, of which nobody here learns anything */
  #checkLettingGo(by: Pairing, device: string): void {
    if (!this.#pairings.ofBay(this.name).some(pairing => pairing.device === device))
      throw new Refused('notFound', 'No such device is paired in this bay.');
    const refusal = mayNotLetGo(
      { role: by.role, owner: this.crew.isOwner(by) },
      { own: device === by.device, connected: this.crew.isConnected(device) },
    );
    if (refusal) throw new Refused(refusal.code, refusal.sentence);
  }

  /**
   * Opens a session in this bay, by what leaves it in `#run`.
   * @throws Refused when another one goes on here
   */
  async #open(make: () => Promise<void>): Promise<void> {
    if (this.#starting || (this.#run && !this.#run.isOver))
      throw new Refused('notNow', 'A session goes on in this bay; stop and end it first.');
    this.#starting = true;
    const before = this.#run;
    try {
      await make();
      await before?.close();
      const begun = this.#run?.session.begin();
      this.#starting = false;
      this.#takeStopsToCome();
      await begun;
    } finally {
      this.#starting = false;
      this.#stopsToCome = [];
    }
  }

  /** A session that is gone on with: what was done in it is not done again. */
  #take({ run, entries }: Resumed): void {
    this.#done.restore(entries);
    this.#follow(run);
  }

  /** @throws Refused where the procedure would not let the session be ended either */
  async #setAside(by: Pairing, id: string, deed: Deed): Promise<void> {
    const run = running(this.#run);
    if (!run.mayBeLeft)
      throw new Refused(
        'notNow',
        'A session is set aside when it is stopped and everything is said to be off: stop it, then answer.',
      );
    this.#record(by, id, deed);
    this.#run = null;
    this.#holdAsked = null;
    this.#showNow();
    await run.close();
    await this.#starter.leave(this.name);
  }

  #takeStopsToCome(): void {
    const stops = this.#stopsToCome;
    this.#stopsToCome = [];
    this.#stops.look(false);
    for (const { by, id, how } of stops) this.stop(by, id, how);
  }

  #follow(run: Run): void {
    this.#run = run;
    this.#holdAsked = null;
    const turns = new Turns(run.id, () => run.record.entries);
    this.#turns = turns;
    run.session.watch(() => {
      turns.look(run.session.moment);
      this.#stops.look(run.session.moment.matches('stopped'));
      if (standsStill(run.session.moment)) this.#holdAsked = null;
    });
    run.viewer.watch(() => this.show());
    run.session.watch(happening => {
      // Ahead of the answer to what is in memory only.
      if (happening?.kind === 'notKept') this.#showNow();
    });
    this.#sourceIs();
    this.show();
  }

  /** What listens, as the faces name it: the device that leads. */
  #sourceIs(): void {
    const owner = this.crew.list().find(device => device.owner && device.listens);
    this.#run?.viewer.listensWith(owner?.name ?? NOBODY);
  }

  #mouths(): Mouths {
    const sessionMs = () => this.sessionMs ?? 0;
    return {
      say: (text, priority) => {
        const moment = this.#run?.session.moment;
        const addressed = moment ? offerOf(moment).by : 'technician';
        return this.stream.send({ type: 'say', sessionMs: sessionMs(), text, priority, addressed });
      },
      hush: () => this.stream.send({ type: 'hush', sessionMs: sessionMs() }),
      attended: () => this.crew.attended(),
    };
  }

  #state(): BayState {
    const run = this.#run;
    const moment = run && !run.isOver ? run.session.moment : null;
    return {
      bay: this.name,
      session: run?.id ?? null,
      view: run?.viewer.view() ?? null,
      profiles: this.#starter.profileNames(this.name),
      usual: this.#starter.usual,
      language: run?.language ?? this.#starter.usual.language,
      mayBeLeft: run?.mayBeLeft ?? false,
      turn: this.#turn,
      grammar: moment ? (run?.session.grammar('voice') ?? null) : null,
      firing: run?.firing ?? null,
      devices: this.crew.list(),
      clear: clearOf(moment, this.crew.has('second')),
      holdAsked: this.#holdAsked,
    };
  }
}

/** As a session in a terminal or a page calls what is done without a voice. */
const NOBODY = 'keys';

const voiceIn = ({ voice }: Extract<Deed, { do: 'heard' }>) =>
  voice ? { voice: Float32Array.from(voice), stopped: false } : null;

const standsStill = (moment: Moment) => moment.matches('held') || moment.matches('stopped');
