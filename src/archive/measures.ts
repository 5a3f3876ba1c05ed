import type { Recorded } from '../record/vocabulary/index.ts';

/** Where in a session a figure is measured, and in which SI unit. */
interface Measure {
  readonly title: string;
  readonly kind: 'verdict' | 'inTime' | 'session';
  readonly step: string;
  readonly unit: string;
}

const verdict = (step: string, unit: string, title: string): Measure => ({
  kind: 'verdict',
  step,
  unit,
  title,
});
const sweep = (place: string): Measure =>
  verdict(`sweeps.${place}`, 'kPa', `oil pressure at the ${place} sweep`);

/** What can be compared between starts. The names are part of the command line and of stored data. */
export const measures = {
  'oil-pressure-time': {
    kind: 'inTime',
    step: 'firstFire.oilPressure',
    unit: 's',
    title: 'time to oil pressure after first fire',
  },
  'idle-oil-pressure': verdict('checks.oilPressure', 'kPa', 'oil pressure at idle'),
  'idle-speed': verdict('checks.idle', 'rpm', 'idle speed'),
  'cranking-voltage': verdict('noFuelCrank.voltage', 'V', 'battery voltage while cranking'),
  'battery-voltage': verdict('keyOn.battery', 'V', 'battery voltage at rest'),
  'charging-voltage': verdict('checks.charging', 'V', 'charging voltage'),
  'primer-strokes': verdict('prime.strokes', 'count', 'strokes of the hand primer'),
  'oil-quantity': verdict('fill.oilQuantity', 'litre', 'oil filled'),
  'ambient-temperature': verdict('job.ambient', 'degC', 'ambient temperature'),
  'shutdown-coolant-temperature': verdict('shutdown.coolant', 'degC', 'coolant temperature at shutdown'),
  'sweep-1-oil-pressure': sweep('first'),
  'sweep-2-oil-pressure': sweep('second'),
  'sweep-3-oil-pressure': sweep('third'),
  'sweep-4-oil-pressure': sweep('fourth'),
  'sweep-5-oil-pressure': sweep('fifth'),
  'sweep-6-oil-pressure': sweep('sixth'),
  'session-time': { kind: 'session', step: '', unit: 's', title: 'time from job card to sign-off' },
} as const satisfies Readonly<Record<string, Measure>>;

export type MeasureName = keyof typeof measures;

export const isMeasureName = (name: string): name is MeasureName => Object.hasOwn(measures, name);

export const measureNames = Object.keys(measures).filter(isMeasureName);

const byPlace: ReadonlyMap<string, MeasureName> = new Map(
  measureNames.map(name => [`${measures[name].kind} ${measures[name].step}`, name]),
);

export interface Measured {
  readonly measure: MeasureName;
  /** Counts from 1: a session may fire its engine, and measure, more than once. */
  readonly nth: number;
  /** Wall clock, UTC. */
  readonly at: string;
  readonly value: number;
}

/** Every figure that a session measured, in the order of time. A value that is not there is left out. */
export function measuredIn(entries: readonly Recorded[]): Measured[] {
  const counts = new Map<MeasureName, number>();
  return entries.flatMap(entry => {
    const found = figureOf(entry);
    if (!found || found.value == null || !Number.isFinite(found.value)) return [];
    const nth = (counts.get(found.measure) ?? 0) + 1;
    counts.set(found.measure, nth);
    return [{ measure: found.measure, nth, at: entry.at, value: found.value }];
  });
}

function figureOf(
  entry: Recorded,
): { readonly measure: MeasureName; readonly value: number | null | undefined } | undefined {
  if (entry.kind === 'closed')
    return entry.data.outcome === 'signedOff'
      ? { measure: 'session-time', value: entry.timeMs / 1000 }
      : undefined;
  if (entry.kind !== 'verdict' && entry.kind !== 'inTime') return undefined;
  const measure = byPlace.get(`${entry.kind} ${entry.data.step}`);
  if (measure === undefined) return undefined;
  return { measure, value: entry.kind === 'verdict' ? entry.data.value : entry.data.seconds };
}
