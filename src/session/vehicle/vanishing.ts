import type { BusQuantity } from '../../../machines/limits/agreement.ts';
import { type Moment, offerOf } from '../../../machines/moment.ts';
import type { Step } from '../../../machines/steps.ts';
import type { VehicleLook } from './vehicle.ts';

/** Of these the bus stops a running engine by itself: that it no longer can has to be known. */
const GUARDING: readonly BusQuantity[] = ['oilPressure', 'engineSpeed'];

/** Finds sensors that were there and are there no more while they are needed; each is given once until it is back. */
export function createVanishing(quantities: readonly BusQuantity[], steps: readonly Step[]) {
  const good = new Set<BusQuantity>();

  function needed(moment: Moment): readonly BusQuantity[] {
    const step = steps.find(({ id }) => id === moment.context.step);
    const turnsOff = step?.kind === 'confirm' && step.standing === true;
    const running = step?.engine === 'running' && !turnsOff && !moment.matches('stopped');
    const { quantity } = offerOf(moment);
    return quantities.filter(each => (running && GUARDING.includes(each)) || each === quantity);
  }

  return {
    check(moment: Moment, look: VehicleLook): BusQuantity[] {
      for (const quantity of quantities) if (look.value(quantity) !== null) good.add(quantity);
      const vanished = needed(moment).filter(each => good.has(each) && look.value(each) === null);
      for (const quantity of vanished) good.delete(quantity);
      return vanished;
    },
  };
}
