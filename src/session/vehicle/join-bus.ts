import { procedureFor } from '../../../machines/first-start.ts';
import type { BusQuantity } from '../../../machines/limits/agreement.ts';
import { isOver, offerOf } from '../../../machines/moment.ts';
import type { BusEnd, BusNotice, BusSource } from '../../bus/ports.ts';
import { createBusWatch } from '../../bus/watch.ts';
import type { VehicleBus } from '../../profile/schema.ts';
import type { Session } from '../session.ts';
import type { BusState } from '../view.ts';
import { createFiller } from './filling.ts';
import { createPatience } from './patience.ts';
import { withSight } from './sight.ts';
import { createStopper } from './stops.ts';
import { createThinning } from './thinning.ts';
import { createVanishing } from './vanishing.ts';
import { createVehicle, type VehicleLook } from './vehicle.ts';

/** How often time alone is looked at: what falls silent, what was awaited, what the face shows. */
const TICK_MS = 200;

/** A vehicle bus that is joined to a session. */
export interface BusLink {
  readonly source: string;
  readonly quantities: readonly BusQuantity[];
  readonly look: VehicleLook;
  state(): BusState;
  /** Settles when the source has ended. */
  readonly done: Promise<void>;
  close(): void;
}

/**
 * Joins a bus to a session: answers are held against it, questions are answered by it, dangers stop the session.
 * Whatever becomes of the bus is told once, and the session goes on by voice and keys.
 * @param bus the profile's section: what this engine sends, and what must be spoken all the same
 * @param onChange called a few times a second, for a face
 */
export function joinBus(
  session: Session,
  source: BusSource,
  bus: VehicleBus,
  onChange: () => void = () => {},
): BusLink {
  const { clock, profile } = session.parts;
  const steps = procedureFor(profile);
  const nowS = () => clock.nowMs() / 1000;
  const vehicle = createVehicle(bus, nowS, onHeard);
  const stopper = createStopper(steps);
  const filler = createFiller(steps);
  const thinning = createThinning(bus.readings);
  const vanishing = createVanishing(bus.readings, steps);
  const patience = createPatience(nowS, TICK_MS / 1000);
  const watch = createBusWatch(patience.nowS());
  const closing = new AbortController();
  let state: BusState = 'notHeard';

  /** Danger first, then what the question at hand asks for. */
  function act(): void {
    const { moment } = session;
    const cause = stopper.check(moment, clock.nowMs(), vehicle);
    if (cause) {
      session.receive({ type: 'stop', cause }, 'technician', 'bus');
      return;
    }
    if (session.speaking) return;
    const body = filler.next(moment, clock.nowMs(), vehicle);
    if (body) session.receive(body, offerOf(moment).by, 'bus');
  }

  function onHeard(): void {
    vanishing.note(vehicle, patience.nowS());
    const running = steps.find(({ id }) => id === session.moment.context.step)?.engine === 'running';
    for (const { quantity, si } of isOver(session.moment)
      ? []
      : thinning.due(clock.nowMs(), running, vehicle))
      session.keep('reading', { quantity, si, via: 'bus' });
    act();
  }

  function tell(notice: BusNotice): void {
    session.report(notice.sentence);
    if (notice.kind === 'lost') gone();
  }

  function gone(): void {
    if (state === 'alive') session.mention('busSilent');
    state = 'gone';
  }

  /** Silence means something once the key is known to be on, or the bus has been heard. */
  function checkSilence(): void {
    if (state === 'gone') return;
    if (state === 'notHeard' && !session.moment.context.done.includes('keyOn.lamps')) return;
    const notice = watch.check(patience.nowS());
    if (!notice) return;
    session.report(notice.sentence);
    session.mention('busSilent');
    state = 'silent';
  }

  function tick(): void {
    if (isOver(session.moment)) return;
    vehicle.tick();
    patience.tick();
    checkSilence();
    if (state === 'alive')
      for (const quantity of vanishing.check(session.moment, vehicle, patience.nowS()))
        session.mention('busSensorLost', { name: { quantityName: quantity } });
    act();
    onChange();
  }

  async function tickOn(): Promise<void> {
    while (!closing.signal.aborted) {
      await clock.sleep(TICK_MS, closing.signal);
      if (!closing.signal.aborted) tick();
    }
  }

  function ended(end: BusEnd): void {
    closing.abort();
    if (end.kind === 'lost') session.report(end.reason);
    else if (!closed) session.report(`${source.description} is over; go on by voice and keys.`);
    if (!closed) gone();
  }

  let closed = false;
  session.attachBus(body => withSight(body, vehicle, session.moment.matches('stopped')));
  const unwatch = session.watch(happening => {
    // Something has changed: another question, or the voice has fallen silent.
    if (happening === null && !closed) act();
  });
  const ticking = tickOn();
  const done = source
    .run(frame => {
      const again = watch.heard(patience.nowS());
      if (state !== 'alive') {
        if (again || state === 'gone') session.report('The vehicle bus is heard again.');
        state = 'alive';
      }
      vehicle.push(frame);
    }, tell)
    .then(ended)
    .then(() => ticking);

  return {
    source: source.description,
    quantities: bus.readings,
    look: vehicle,
    state: () => state,
    done,
    close() {
      closed = true;
      unwatch();
      closing.abort();
      source.close();
    },
  };
}
