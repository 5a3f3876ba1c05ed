import type { Profile } from '../../src/profile/schema.ts';
import type { Look } from '../toolkit.ts';
import { charging } from './electrics.ts';

/** Half way between what the starter does and the slowest idle, rpm: from here the engine runs by itself. */
export const runsFromRpm = ({ starter, idle }: Pick<Profile, 'starter' | 'idle'>): number =>
  (starter.crankingRpm + idle.warm.minRpm) / 2;

/** The speed that stands beside an answer, rpm: by the bus, or by ear where there is none; 0 where nothing is known. */
export const shownRpm = ({ event }: Look): number =>
  event.type === 'reply' ? (event.bus?.speedRpm ?? event.ear?.speedRpm ?? 0) : 0;

/** The bus, or the ear where there is none, says that it runs. */
export const showsRunning = (look: Look): boolean => shownRpm(look) >= runsFromRpm(look.context.profile);

/** What only an engine that runs shows, where the bus gives no speed of it. */
export interface ShownRunning {
  readonly quantity: 'oilPressure' | 'chargingVoltage';
  /** In the unit of its quantity. */
  readonly si: number;
}

/**
 * What stands beside an answer by the bus and speaks for an engine that runs: oil pressure that shows, or a voltage that
 * no battery at rest has. A speed says it better, and where there is one, this is silent. A bus that gives none of it says
 * neither that it runs nor that it stands.
 */
export function shownRunning({ context, event }: Look): ShownRunning | null {
  if (event.type !== 'reply' || event.bus === undefined || event.bus.speedRpm !== undefined) return null;
  const { oilPressureKpa, chargingV } = event.bus;
  if (oilPressureKpa !== undefined && oilPressureKpa >= context.profile.oilPressure.showsKpa)
    return { quantity: 'oilPressure', si: oilPressureKpa };
  if (chargingV === undefined) return null;
  const charged = charging(context, chargingV);
  const leastV = charged.ok ? charged.value.min : undefined;
  return leastV !== undefined && chargingV >= leastV ? { quantity: 'chargingVoltage', si: chargingV } : null;
}
