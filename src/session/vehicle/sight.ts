import type { BusSight } from '../../../machines/events.ts';
import { isBusQuantity } from '../../../machines/limits/agreement.ts';
import type { EventBody } from '../hearing.ts';
import type { VehicleLook } from './vehicle.ts';

function sightOf(body: EventBody, look: VehicleLook, stopped: boolean): BusSight | null {
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
    case 'nothingYet':
    case 'clearToCrank':
    case 'ready': {
      const speedRpm = look.value('engineSpeed');
      return speedRpm === null ? null : { speedRpm };
    }
    // In a stop "correct" may confirm that all is off.
    case 'yes':
      return stopped ? runningSight(look) : null;
    case 'allOff':
    case 'engineOff':
      return runningSight(look);
    default:
      return null;
  }
}

/** What an engine that runs shows; null where the bus gives none of it. */
function runningSight(look: VehicleLook): BusSight | null {
  const speedRpm = look.value('engineSpeed');
  const oilPressureKpa = look.value('oilPressure');
  const chargingV = look.value('chargingVoltage');
  const seen = {
    ...(speedRpm === null ? {} : { speedRpm }),
    ...(oilPressureKpa === null ? {} : { oilPressureKpa }),
    ...(chargingV === null ? {} : { chargingV }),
  };
  return Object.keys(seen).length === 0 ? null : seen;
}

/**
 * An answer, with what the bus shows at that moment beside it: the machine then decides by both, and replays so.
 * @param stopped everything is being made safe, or has been
 */
export function withSight(body: EventBody, look: VehicleLook, stopped = false): EventBody {
  if (body.type !== 'value' && body.type !== 'reply') return body;
  const bus = sightOf(body, look, stopped);
  return bus ? { ...body, bus } : body;
}
