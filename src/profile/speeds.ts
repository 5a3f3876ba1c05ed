import type { Profile } from './shape.ts';

/** The fastest that it is ever asked to run. */
export const fastestRpm = ({ idle, sweeps }: Pick<Profile, 'idle' | 'sweeps'>): number =>
  Math.max(idle.cold.maxRpm, ...sweeps.map(sweep => sweep.rpm));

/** The speed at which it has to be stopped, rpm: the lowest that the profile names; undefined where it names none. */
export function stopsFromRpm({
  overspeedRpm,
  bus,
}: Pick<Profile, 'overspeedRpm' | 'bus'>): number | undefined {
  const named = [overspeedRpm, bus?.overspeedRpm].filter(rpm => rpm !== undefined);
  return named.length > 0 ? Math.min(...named) : undefined;
}
