import type { Profile } from '../profile/schema.ts';
import type { Recorded } from '../record/vocabulary/index.ts';
import { comparedFigures, FigureReader, mayHoldFigure } from '../session/past-starts/figures.ts';

/** Where in a session a figure is measured, and in which SI unit. */
interface Measure {
  readonly title: string;
  readonly kind: 'verdict' | 'inTime' | 'warmUp' | 'session';
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
    ...comparedFigures['oil-pressure-time'],
    title: 'time to oil pressure after first fire',
  },
  'idle-oil-pressure': verdict('checks.oilPressure', 'kPa', 'oil pressure at idle'),
  'idle-speed': { ...comparedFigures['idle-speed'], title: 'idle speed' },
  'cranking-voltage': { ...comparedFigures['cranking-voltage'], title: 'battery voltage while cranking' },
  'battery-voltage': verdict('keyOn.battery', 'V', 'battery voltage at rest'),
  'charging-voltage': { ...comparedFigures['charging-voltage'], title: 'charging voltage' },
  'warm-up-pace': { ...comparedFigures['warm-up-pace'], title: 'time that the coolant takes for 10 K' },
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

/**
 * Every figure that a session measured, in the order of time. A value that is not there is left out.
 * @param profile null where it is not known: then nothing is told of the warm-up
 */
export function measuredIn(entries: readonly Recorded[], profile: Profile | null): Measured[] {
  const counts = new Map<MeasureName, number>();
  const figures = new FigureReader(profile);
  const measured = (
    { at }: Recorded,
    measure: MeasureName,
    value: number | null | undefined,
  ): readonly Measured[] => {
    if (value == null || !Number.isFinite(value)) return [];
    const nth = (counts.get(measure) ?? 0) + 1;
    counts.set(measure, nth);
    return [{ measure, nth, at, value }];
  };
  return entries.flatMap(entry => {
    const compared = mayHoldFigure(entry) ? figures.take(entry, entry.timeMs) : undefined;
    if (compared) return measured(entry, compared.figure, compared.value);
    const found = figureOf(entry);
    return found ? measured(entry, found.measure, found.value) : [];
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
