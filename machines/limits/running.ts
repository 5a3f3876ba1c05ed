import type { Profile } from '../../src/profile/schema.ts';
import type { Look } from '../toolkit.ts';

/** Half way between what the starter does and the slowest idle, rpm: from here the engine runs by itself. */
export const runsFromRpm = ({ starter, idle }: Pick<Profile, 'starter' | 'idle'>): number =>
  (starter.crankingRpm + idle.warm.minRpm) / 2;

/** The speed that stands beside an answer, rpm: by the bus, or by ear where there is none; 0 where nothing is known. */
export const shownRpm = ({ event }: Look): number =>
  event.type === 'reply' ? (event.bus?.speedRpm ?? event.ear?.speedRpm ?? 0) : 0;

/** The bus, or the ear where there is none, says that it runs. */
export const showsRunning = (look: Look): boolean => shownRpm(look) >= runsFromRpm(look.context.profile);
