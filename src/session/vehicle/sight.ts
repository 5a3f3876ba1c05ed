import type { BusSight } from '../../../machines/events.ts';
import { isBusQuantity } from '../../../machines/limits/agreement.ts';
import type { EventBody } from '../hearing.ts';
import type { VehicleLook } from './vehicle.ts';

function sightOf(body: EventBody, look: VehicleLook): BusSight | null {
  if (body.type === 'value') {
    const si = isBusQuantity(body.quantity) ? look.value(body.quantity) : null;
    return si === null ? null : { si };
  }
  if (body.type !== 'reply') return null;
  switch (body.id) {
    case 'lit':
    case 'dark':
    case 'firstLamps':
    case 'secondLamps':
    case 'thirdLamps':
    case 'firstLampsRunning':
    case 'secondLampsRunning':
    case 'thirdLampsRunning':
      return { lamps: look.lamps() };
    case 'noCodes':
    case 'noMoreCodes':
    case 'faultCleared': {
      const codes = look.codes();
      return codes && { codes };
    }
    case 'allOff':
    case 'engineOff': {
      const speedRpm = look.value('engineSpeed');
      return speedRpm === null ? null : { speedRpm };
    }
    default:
      return null;
  }
}

/** An answer, with what the bus shows at that moment beside it: the machine then decides by both, and replays so. */
export function withSight(body: EventBody, look: VehicleLook): EventBody {
  if (body.type !== 'value' && body.type !== 'reply') return body;
  const bus = sightOf(body, look);
  return bus ? { ...body, bus } : body;
}
