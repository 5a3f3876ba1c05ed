import { initialTransition, transition } from 'xstate';
import { buildStep } from '../../../machines/build-step.ts';
import type { Context } from '../../../machines/context.ts';
import type { SessionEvent } from '../../../machines/events.ts';
import { initialContext, procedureFor } from '../../../machines/first-start.ts';
import type { Step } from '../../../machines/steps.ts';
import { nextAlarmMs } from '../../../machines/timing.ts';
import { kit, type Offer } from '../../../machines/toolkit.ts';
import type { Quantity } from '../../../machines/vocabulary.ts';
import type { ReplyId, StepId } from '../../../prompts/types.ts';
import type { Profile } from '../../../src/profile/schema.ts';
import type { BusSight, EarSight, VoiceSight } from '../../../src/record/vocabulary/event.ts';
import type { EventBody } from '../../../src/session/hearing.ts';
import { type Happened, type How, job, PAUSE_MS, toldBy } from './driver.ts';
import { demoSix } from './profiles.ts';

const machineOf = (step: Step, all: readonly Step[], context: Context) =>
  kit.createMachine({
    context,
    initial: 'before',
    states: {
      before: { on: { '*': 'procedure' } },
      procedure: {
        id: 'procedure',
        initial: 'step',
        on: { hold: 'held' },
        states: { step: buildStep(step, all), next: {}, memory: { type: 'history', history: 'deep' } },
      },
      held: { on: { continue: '#procedure.memory' } },
      stopped: { id: 'stopped' },
      ended: { id: 'ended' },
    },
  });

type Machine = ReturnType<typeof machineOf>;

/** How an answer comes, and what else is seen and heard at its moment. */
export interface Answered extends How {
  readonly bus?: BusSight;
  readonly ear?: EarSight;
  readonly voice?: VoiceSight;
}

/** The procedure that a step stands in, and what the session knows as it is begun. */
export interface Around {
  readonly profile?: Profile;
  readonly all?: readonly Step[];
  readonly context?: Partial<Context>;
  /** What led to it, and when, s; asked for after the step before it where nothing is said. */
  readonly begunBy?: EventBody;
  readonly beginsS?: number;
}

/**
 * One step by itself, as the procedure has it: where it passes it comes to `next`, where it stops the engine to
 * `stopped`. For what one kind of step does with each event, in far less time than a start takes.
 */
export class OneStep {
  readonly machine: Machine;
  moment: ReturnType<Machine['transition']>;
  nowMs = 0;
  readonly history: Omit<Happened, 'before' | 'after'>[] = [];

  constructor(
    step: Step,
    {
      profile = demoSix,
      all = [step],
      context = {},
      begunBy = { type: 'reply', id: 'yes' },
      beginsS = 0,
    }: Around = {},
  ) {
    const known = initialContext({ input: { profile, job } }, step);
    this.machine = machineOf(step, all, { ...known, ...context });
    [this.moment] = initialTransition(this.machine, { profile, job });
    this.send(begunBy, { by: step.by, via: 'keys', afterMs: beginsS * 1000 });
  }

  /** The innermost state; `next`, `stopped` or `ended` where the step is left. */
  get name(): string {
    let value: unknown = this.moment.value;
    while (typeof value === 'object' && value !== null) value = Object.values(value)[0];
    return String(value);
  }

  get context(): Context {
    return this.moment.context;
  }

  get offer(): Offer {
    const offers: readonly (Offer | undefined)[] = Object.values(this.moment.getMeta());
    return offers.find(offer => offer !== undefined) ?? { replies: [], by: 'technician' };
  }

  get isCritical(): boolean {
    return this.moment.hasTag('critical');
  }

  get said() {
    return this.history.at(-1)?.said ?? [];
  }

  get lines(): string[] {
    return this.said.map(({ line }) => line);
  }

  get notes() {
    return this.history.at(-1)?.notes ?? [];
  }

  /** When the clock is looked at next, s. */
  get alarmS(): number | null {
    const alarmMs = nextAlarmMs(this.context);
    return alarmMs === null ? null : alarmMs / 1000;
  }

  /** Another one that stands where this one does. */
  fork(): OneStep {
    return Object.assign(Object.create(OneStep.prototype) as OneStep, this, { history: [...this.history] });
  }

  send(body: EventBody, { by = this.offer.by, via = 'voice', afterMs = PAUSE_MS }: How = {}): this {
    this.nowMs += afterMs;
    const event: SessionEvent = { ...body, by, via, atMs: this.nowMs };
    const [moment, actions] = transition(this.machine, this.moment, event);
    this.moment = moment;
    this.history.push({ event, ...toldBy(actions) });
    return this;
  }

  reply(id: ReplyId, { bus, ear, voice, ...how }: Answered = {}): this {
    return this.send(
      { type: 'reply', id, ...(bus && { bus }), ...(ear && { ear }), ...(voice && { voice }) },
      how,
    );
  }

  value(quantity: Quantity, si: number, { bus, ear, voice, ...how }: Answered = {}): this {
    return this.send(
      { type: 'value', quantity, si, ...(bus && { bus }), ...(ear && { ear }), ...(voice && { voice }) },
      how,
    );
  }

  /** What was said was not understood, so many times. */
  unclear(times = 1, how: How = {}): this {
    for (let time = 0; time < times; time += 1) this.send({ type: 'unclear' }, how);
    return this;
  }

  /** Looks at the clock so many seconds later. */
  clock(afterS: number): this {
    return this.send({ type: 'clock' }, { via: 'tool', afterMs: afterS * 1000 });
  }
}

type OfKind<Kind extends Step['kind']> = Extract<Step, { kind: Kind }>;

/** A step of the procedure for an engine, asked for at once: no gate keeps it waiting. */
export function stepOf<Kind extends Step['kind']>(
  kind: Kind,
  id: StepId,
  profile: Profile = demoSix,
): OfKind<Kind> {
  const step = procedureFor(profile).find(step => step.id === id);
  if (!isOfKind(step, kind)) throw new Error(`${id} is no ${kind} of this engine's.`);
  return { ...step, needs: [] };
}

const isOfKind = <Kind extends Step['kind']>(step: Step | undefined, kind: Kind): step is OfKind<Kind> =>
  step?.kind === kind;
