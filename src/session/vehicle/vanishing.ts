import type { BusQuantity } from '../../../machines/limits/agreement.ts';
import { type Moment, offerOf } from '../../../machines/moment.ts';
import type { Step } from '../../../machines/steps.ts';
import type { VehicleLook } from './vehicle.ts';

/** Of these the bus stops a running engine by itself: that it no longer can has to be known. */
const GUARDING: readonly BusQuantity[] = ['oilPressure', 'engineSpeed'];

/** Something good that was heard so lately is only late: seconds, a little more than two looks. */
const LATE_S = 0.5;

/** Finds sensors that were there and are there no more while they are needed; each is given once until it is back. */
export function createVanishing(quantities: readonly BusQuantity[], steps: readonly Step[]) {
  /** When each was last good. */
  const good = new Map<BusQuantity, number>();

  function needed(moment: Moment): readonly BusQuantity[] {
    const step = steps.find(({ id }) => id === moment.context.step);
    const turnsOff = step?.kind === 'confirm' && step.standing === true;
    const running = step?.engine === 'running' && !turnsOff && !moment.matches('stopped');
    const { quantity } = offerOf(moment);
    return quantities.filter(each => (running && GUARDING.includes(each)) || each === quantity);
  }

  /** To be called with what is heard. */
  function note(look: VehicleLook, nowS: number): void {
    for (const quantity of quantities) if (look.value(quantity) !== null) good.set(quantity, nowS);
  }

  return {
    note,
    check(moment: Moment, look: VehicleLook, nowS: number): BusQuantity[] {
      note(look, nowS);
      const vanished = needed(moment).filter(each => nowS - (good.get(each) ?? nowS) > LATE_S);
      for (const quantity of vanished) good.delete(quantity);
      return vanished;
    },
  };
}
