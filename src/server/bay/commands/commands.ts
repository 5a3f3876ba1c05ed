import { PAIRED_FOR_MS, type Pairing, type Pairings } from '../../pairing/pairings.ts';
import type { Command, Deed } from '../../protocol/index.ts';
import { Refused } from '../../refused.ts';
import type { Crew } from '../crew.ts';
import { type CurrentRun, standsStill } from '../current-run.ts';
import type { Opening } from '../opening.ts';
import type { ShownState } from '../shown-state.ts';
import type { Stopping } from '../stopping.ts';
import { AnswersUnderWay } from './answers-under-way.ts';
import { forbidden, mayCallForHelp } from './authority.ts';
import { callTyped, planned, running, type SessionDeed } from './deeds.ts';
import { checkedRenewal, checkLettingGo, pairedHere } from './device-deeds.ts';
import type { DoneCommands } from './done-commands.ts';

/** What commands are carried out on. */
interface Scene {
  readonly bay: string;
  readonly pairings: Pairings;
  readonly crew: Crew;
  readonly current: CurrentRun;
  readonly opening: Opening;
  readonly stopping: Stopping;
  readonly shown: Pick<ShownState, 'show'>;
  readonly done: DoneCommands;
}

/** Carries out what the devices of a bay ask for: each command once, and each question answered once. */
export class Commands {
  readonly #scene: Scene;
  readonly #answers = new AnswersUnderWay();

  constructor(scene: Scene) {
    this.#scene = scene;
  }

  /**
   * Does what a device asks for, once, and returns when it is on the record.
   * @returns true when it had been done before
   * @throws Refused, with nothing changed
   */
  perform(by: Pairing, { id, deed }: Command): Promise<boolean> {
    const { crew, done } = this.#scene;
    return done.once(by.device, id, () => {
      crew.noteWord(by);
      const refusal = forbidden({ role: by.role, owner: crew.isOwner(by) }, deed);
      if (refusal) throw new Refused(refusal.code, refusal.sentence);
      return this.#carryOut(by, id, deed);
    });
  }

  /** Lets go of a device of this bay. @throws Refused when this bay has none such */
  async letGo(device: string): Promise<void> {
    const { pairings, shown } = this.#scene;
    pairedHere(device, this.#scene);
    try {
      await pairings.forget(device);
    } finally {
      shown.show();
    }
  }

  async #carryOut(by: Pairing, id: string, deed: Deed): Promise<void> {
    const { current, shown } = this.#scene;
    await this.#effect(by, id, deed);
    shown.show();
    await current.run?.session.settled();
  }

  /** All that a command has to do at once is done when this returns; its promise settles when the rest is. */
  async #effect(by: Pairing, id: string, deed: Deed): Promise<void> {
    const { pairings, crew, current, opening, stopping } = this.#scene;
    const record = () => current.record(by, id, deed);
    switch (deed.do) {
      case 'begin':
        await opening.begin(deed);
        return record();
      case 'resume':
        await opening.goOn(deed.session);
        return record();
      case 'setAside':
        return opening.setAside(record);
      case 'madeSafe':
        return opening.madeSafe(by.name);
      case 'takeOver':
        crew.takeOver(by);
        record();
        return current.listensWith(crew.source);
      case 'forget':
        checkLettingGo(by, deed.device, this.#scene);
        record();
        return this.letGo(deed.device);
      case 'renew': {
        const device = checkedRenewal(by, deed.device, this.#scene);
        record();
        await pairings.renew(device, PAIRED_FOR_MS);
        return;
      }
      case 'askHold': {
        const { session } = running(current.run);
        if (standsStill(session.moment))
          throw new Refused('notNow', 'The session stands still already; nothing is left to be held.');
        record();
        current.askHold(by);
        return session.mention('holdAsked');
      }
      case 'declineHold':
        record();
        return current.declineHold();
      case 'stop':
        stopping.stop(by, id, deed);
        return;
      default:
        return this.#answer(by, id, deed);
    }
  }

  /** Fire and injury typed where they count for nothing: refused, and on the record. */
  #keepUnheeded(by: Pairing, id: string, deed: SessionDeed): void {
    if (mayCallForHelp(by.role) || deed.do !== 'say') return;
    const { current, stopping } = this.#scene;
    const cause = callTyped(running(current.run).session, deed);
    stopping.notCarriedOut(by, id, { cause }, 'notAtEngine', 'say');
  }

  async #answer(by: Pairing, id: string, deed: SessionDeed): Promise<void> {
    const { crew, current, shown } = this.#scene;
    const { turn } = current;
    // On a slow disk the answer before may not have had its effect yet: this one would be to what comes after.
    const scene = { run: running(current.run), crew, turn: this.#answers.open(turn) };
    this.#keepUnheeded(by, id, deed);
    const carryOut = planned(deed, by, scene);
    const { session, voices } = scene.run;
    if (deed.do === 'heard') voices.hears(voiceIn(deed), by.device);
    // Before its effects: after a power loss between the two it is not done, and never twice.
    current.record(by, id, deed);
    carryOut();
    // Whatever turn it was said for: what counts at any turn may change what is asked, too.
    await this.#answers.until(turn, () => {
      shown.show();
      return session.settled();
    });
  }
}

const voiceIn = ({ voice }: Extract<Deed, { do: 'heard' }>) =>
  voice ? { voice: Float32Array.from(voice), stopped: false } : null;
