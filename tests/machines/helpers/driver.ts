import { initialTransition, transition } from 'xstate';
import type { JobCard, Said } from '../../../machines/context.ts';
import type { SessionEvent } from '../../../machines/events.ts';
import { buildFirstStart, type FirstStart } from '../../../machines/first-start.ts';
import { isOver, type Moment, offerOf, stateName } from '../../../machines/moment.ts';
import { nextAlarmMs } from '../../../machines/timing.ts';
import type { Note } from '../../../machines/toolkit.ts';
import type { Person, Quantity, Via } from '../../../machines/vocabulary.ts';
import type { ReplyId } from '../../../prompts/types.ts';
import type { Profile } from '../../../src/profile/schema.ts';
import type { EventBody } from '../../../src/session/hearing.ts';
import { isAskedTogether } from '../../helpers/together.ts';
import { goodBody, goodPauseMs } from './good.ts';

export const job: JobCard = { vehicle: 'V', engine: 'E', technician: 'T', second: 'S', supervisor: 'U' };

/** What one event did: where it led from and to, what was said and what went on the record. */
export interface Happened {
  readonly event: SessionEvent;
  readonly before: Moment;
  readonly after: Moment;
  readonly said: readonly Said[];
  readonly notes: readonly Note[];
}

type Action = { readonly type: string; readonly params?: unknown };

const paramsOf = (actions: readonly Action[], type: string) =>
  actions.flatMap(action => (action.type === type && action.params !== null ? [action.params] : []));

/** What actions say and put on the record, in their order. */
export function toldBy(actions: readonly Action[]): Pick<Happened, 'said' | 'notes'> {
  const strange = actions.find(({ type }) => type !== 'say' && type !== 'note');
  if (strange) throw new Error(`Does what no machine may do: ${strange.type}`);
  return { said: paramsOf(actions, 'say') as Said[], notes: paramsOf(actions, 'note') as Note[] };
}

export function takeStep(machine: FirstStart, before: Moment, event: SessionEvent): Happened {
  const [after, actions] = transition(machine, before, event);
  return { event, before, after, ...toldBy(actions) };
}

const machines = new Map<Profile, FirstStart>();

/** One machine for each profile: it holds no state of its own. */
export function machineFor(profile: Profile): FirstStart {
  const known = machines.get(profile);
  if (known) return known;
  const machine = buildFirstStart(profile);
  machines.set(profile, machine);
  return machine;
}

export interface How {
  readonly by?: Person;
  readonly via?: Via;
  /** Time that goes by before it, ms. */
  readonly afterMs?: number;
}

/** Time between one thing and the next where a test does not care, ms. */
export const PAUSE_MS = 1000;

/** A session without a face: events go in, the moment and everything that happened can be looked at. */
export class Driver {
  readonly profile: Profile;
  readonly machine: FirstStart;
  moment: Moment;
  nowMs = 0;
  readonly history: Happened[] = [];

  constructor(profile: Profile) {
    this.profile = profile;
    this.machine = machineFor(profile);
    this.moment = initialTransition(this.machine, { profile, job })[0];
  }

  /** Another session that begins where this one is, and remembers as much of the way there. */
  fork(history: readonly Happened[] = this.history): Driver {
    const copy = new Driver(this.profile);
    copy.moment = this.moment;
    copy.nowMs = this.nowMs;
    copy.history.push(...history);
    return copy;
  }

  get name(): string {
    return stateName(this.moment);
  }

  get context() {
    return this.moment.context;
  }

  get over(): boolean {
    return isOver(this.moment);
  }

  get alarmMs(): number | null {
    return nextAlarmMs(this.context);
  }

  get last(): Happened {
    const last = this.history.at(-1);
    if (!last) throw new Error('Nothing has happened yet.');
    return last;
  }

  /** The lines of the last event, by their names. */
  get lines(): string[] {
    return this.last.said.map(said => said.line);
  }

  get notes(): Note[] {
    return this.history.flatMap(happened => happened.notes);
  }

  send(body: EventBody, { by = offerOf(this.moment).by, via = 'voice', afterMs = PAUSE_MS }: How = {}): this {
    this.nowMs += afterMs;
    const happened = takeStep(this.machine, this.moment, { ...body, by, via, atMs: this.nowMs });
    this.history.push(happened);
    this.moment = happened.after;
    return this;
  }

  reply(id: ReplyId, how: How = {}): this {
    return this.send({ type: 'reply', id }, how);
  }

  value(quantity: Quantity, si: number, how: How = {}): this {
    return this.send({ type: 'value', quantity, si }, how);
  }

  stop(how: How = {}): this {
    return this.send({ type: 'stop' }, how);
  }

  /** Lets time go by, with a look at the clock at the end of it only. */
  clock(afterMs: number): this {
    return this.send({ type: 'clock' }, { via: 'tool', afterMs });
  }

  /** Rings the alarm that is due next. */
  ring(): this {
    const { alarmMs } = this;
    if (alarmMs === null) throw new Error(`No alarm is set in ${this.name}.`);
    return this.clock(Math.max(0, alarmMs - this.nowMs));
  }

  /** What people do next in a start where all goes well. */
  good(): this {
    const body = goodBody(this.moment);
    return body ? this.send(body, { afterMs: goodPauseMs(this.moment) ?? PAUSE_MS }) : this.ring();
  }

  /** All goes well until the named state, or one for which `reached` holds. */
  goodUntil(reached: string | ((driver: Driver) => boolean)): this {
    const there = typeof reached === 'string' ? (driver: Driver) => driver.name === reached : reached;
    for (let turn = 0; !there(this); turn += 1) {
      if (this.over || turn > 2000) throw new Error(`Never came to ${String(reached)}; is at ${this.name}.`);
      if (typeof reached === 'string' && isAskedTogether(this.moment, reached)) this.reply('oneByOne');
      else this.good();
    }
    return this;
  }

  /** All goes well to the end. */
  goodToTheEnd(): this {
    return this.goodUntil(driver => driver.over);
  }
}
