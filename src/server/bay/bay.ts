import type { Moment } from '../../../machines/moment.ts';
import { grammarOf } from '../../session/grammar.ts';
import type { EarLevel } from '../../voice/ports.ts';
import type { Pairing, Pairings } from '../pairing/pairings.ts';
import type { BayState, Command, Deed } from '../protocol/index.ts';
import { Refused } from '../refused.ts';
import { forbidden } from './authority.ts';
import { Crew, type FoundOffset } from './crew.ts';
import { planned, running } from './deeds.ts';
import { DoneCommands } from './done-commands.ts';
import { FrameStream } from './frame-stream.ts';
import { clearOf, questionOf, Turns } from './question.ts';
import type { Mouths } from './remote-voice.ts';
import type { Run } from './run.ts';
import type { Starter } from './starter.ts';

/** One bay of the shop: its devices, its session, and what all of them are told. */
export class Bay {
  readonly name: string;
  readonly crew: Crew;
  readonly stream: FrameStream;
  readonly #pairings: Pairings;
  readonly #starter: Starter;
  readonly #done = new DoneCommands();
  #run: Run | null = null;
  #turns = new Turns('', () => 0);
  #holdAsked: BayState['holdAsked'] = null;
  #showing = false;
  #starting = false;

  constructor(name: string, pairings: Pairings, starter: Starter) {
    this.name = name;
    this.#pairings = pairings;
    this.#starter = starter;
    this.crew = new Crew(name, pairings);
    this.stream = new FrameStream(this.#state());
  }

  /** Goes on with the session that broke off when the server ended, if there is one. */
  async resume(): Promise<void> {
    const resumed = await this.#starter.resume(this.name, this.#mouths());
    if (!resumed) return;
    this.#done.restore(resumed.entries);
    this.#follow(resumed.run);
    await resumed.run.session.begin(true);
  }

  /** The session that is not over, by its id. */
  get goingOn(): string | null {
    return this.#run && !this.#run.isOver ? this.#run.id : null;
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
    this.#sourceIs();
    this.show();
  }

  found(pairing: Pairing, offset: FoundOffset): void {
    this.crew.found(pairing.device, offset);
    this.show();
  }

  /** The owner's device has said this sentence; nobody else's word about it counts. */
  spoken(pairing: Pairing, seq: number): void {
    if (this.crew.isOwner(pairing)) this.#run?.speech.voice.spoken(seq);
  }

  /** What the owner's device hears of the bay: whether a voice can be trusted there. */
  level(level: EarLevel): void {
    this.#run?.session.level(level);
  }

  /**
   * Does what a device asks for, once, and returns when it is on the record.
   * @returns true when it had been done before
   * @throws Refused, with nothing changed
   */
  async perform(by: Pairing, { id, deed }: Command): Promise<boolean> {
    const before = this.#done.find(by.device, id);
    if (before) {
      await before;
      return true;
    }
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
      this.stream.show(this.#state(), this.sessionMs ?? 0);
    });
  }

  async close(): Promise<void> {
    await this.#run?.close();
  }

  async #carryOut(by: Pairing, id: string, deed: Deed): Promise<void> {
    switch (deed.do) {
      case 'begin':
        await this.#begin(deed);
        this.#record(by, id, deed);
        break;
      case 'takeOver':
        this.crew.takeOver(by);
        this.#record(by, id, deed);
        this.#sourceIs();
        break;
      case 'forget':
        if (this.crew.isConnected(deed.device))
          throw new Refused('notNow', 'That device is still there; only one that has left can be let go of.');
        await this.#pairings.forget(deed.device);
        this.#record(by, id, deed);
        break;
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
      default: {
        const scene = { run: running(this.#run), crew: this.crew, turn: this.#turns.name };
        const carryOut = planned(deed, by, scene);
        // Before its effects: after a power loss between the two it is not done, and never twice.
        this.#record(by, id, deed);
        carryOut();
      }
    }
    this.show();
    await this.#run?.session.settled();
  }

  #record({ device, name, role }: Pairing, id: string, deed: Deed): void {
    if (this.#run && !this.#run.isOver)
      this.#run.session.keep('command', { id, device, name, role, do: deed.do });
  }

  async #begin(deed: Extract<Deed, { do: 'begin' }>): Promise<void> {
    if (this.#starting || (this.#run && !this.#run.isOver))
      throw new Refused('notNow', 'A session goes on in this bay; stop and end it first.');
    this.#starting = true;
    try {
      const run = await this.#starter.start(this.name, deed, this.#mouths());
      await this.#run?.close();
      this.#follow(run);
      await run.session.begin(false);
    } finally {
      this.#starting = false;
    }
  }

  #follow(run: Run): void {
    this.#run = run;
    this.#holdAsked = null;
    const turns = new Turns(run.id, () => run.record.entries);
    this.#turns = turns;
    turns.look(run.session.moment);
    run.session.watch(() => {
      turns.look(run.session.moment);
      if (standsStill(run.session.moment)) this.#holdAsked = null;
    });
    run.viewer.watch(() => this.show());
    this.#sourceIs();
    this.show();
  }

  /** What listens, as the faces name it: the device that leads. */
  #sourceIs(): void {
    const owner = this.crew.list().find(device => device.owner && device.connected);
    this.#run?.viewer.listensWith(owner?.name ?? 'nobody');
  }

  #mouths(): Mouths {
    const sessionMs = () => this.sessionMs ?? 0;
    return {
      say: (text, priority) => {
        const moment = this.#run?.session.moment;
        const addressed = moment ? questionOf(moment, false).addressed : 'technician';
        return this.stream.send({ type: 'say', sessionMs: sessionMs(), text, priority, addressed });
      },
      hush: () => this.stream.send({ type: 'hush', sessionMs: sessionMs() }),
      attended: () => this.crew.attended(),
    };
  }

  #state(): BayState {
    const run = this.#run;
    const moment = run && !run.isOver ? run.session.moment : null;
    const { language, units } = run?.session.parts ?? {};
    return {
      bay: this.name,
      session: run?.id ?? null,
      view: run?.viewer.view() ?? null,
      profiles: this.#starter.profileNames,
      turn: this.#turns.name,
      grammar: moment && language && units ? grammarOf(moment, language, units, 'voice') : null,
      devices: this.crew.list(),
      clear: clearOf(moment, this.crew.has('second')),
      holdAsked: this.#holdAsked,
    };
  }
}

const standsStill = (moment: Moment) => moment.matches('held') || moment.matches('stopped');
