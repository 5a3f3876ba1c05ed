import { nearLimits, roomy } from '../../engineering/axis.ts';
import type { Manner } from '../manner.ts';
import type { Reading, TimeLine } from '../model.ts';
import { frame, phaseBands, timeAxis, valueAxis } from './frame.ts';
import { limitShapes } from './limits.ts';
import type { Scene, Shape } from './scene.ts';
import { type Point, thin } from './thin.ts';

/** With more readings than this a line is clearer than dots. */
const MOST_DOTS = 80;
const LEAST_SPAN_MS = 30_000;
/** Readings that one line may join, as index ranges: none of the lines runs across a stop. */
function pieces(ordered: readonly Reading[], stops: TimeLine['stops']): (readonly [number, number])[] {
  const cuts = stops
    .filter(({ drill }) => !drill)
    .map(({ fromMs }) => ordered.findIndex(({ timeMs }) => timeMs > fromMs))
    .filter(index => index > 0);
  const ends = [0, ...new Set(cuts.toSorted((a, b) => a - b)), ordered.length];
  return ends.slice(1).map((end, index) => [ends[index] ?? 0, end] as const);
}

/**
 * One quantity against time: phases behind it, limits beside it, and whatever is outside them marked.
 * @param readings of one quantity, at least one, in order of time
 */
export function timePlot(
  readings: readonly Reading[],
  { phases, stops }: Pick<TimeLine, 'phases' | 'stops'>,
  toUser: (si: number) => number,
  manner: Manner,
  size: { readonly width: number; readonly height: number },
): Scene {
  const ordered = readings.toSorted((a, b) => a.timeMs - b.timeMs);
  const values = ordered.map(({ si }) => toUser(si));
  const limits = ordered
    .flatMap(({ verdict }) => [verdict?.min, verdict?.max])
    .filter(limit => limit !== undefined)
    .map(toUser);
  const times = ordered.map(({ timeMs }) => timeMs);
  const x = roomy(times, LEAST_SPAN_MS);
  const y = roomy(
    [...values, ...nearLimits(values, limits)],
    Math.max(1e-6, Math.abs(values[0] ?? 0) * 0.05),
  );
  const box = frame(size.width, size.height, { from: Math.max(0, x.from), to: x.to }, y);
  const points = ordered.map(({ timeMs, si }): Point => [box.x.at(timeMs), box.y.at(toUser(si))]);
  const dots: Shape[] = ordered.flatMap(({ verdict }, index) => {
    const point = points[index];
    const bad = verdict?.met === false;
    if (!point || (!bad && points.length > MOST_DOTS)) return [];
    return [{ kind: 'dot', x: point[0], y: point[1], radius: bad ? 2.6 : 1.8, ink: bad ? 'bad' : 'reading' }];
  });
  return {
    ...size,
    shapes: [
      ...phaseBands(box, phases),
      ...limitShapes(box, ordered, phases, toUser),
      ...valueAxis(box, manner),
      ...timeAxis(box),
      ...pieces(ordered, stops).map(
        ([from, to]): Shape => ({
          kind: 'line',
          points: thin(points.slice(from, to), Math.round(size.width)),
          ink: 'reading',
          width: 1,
        }),
      ),
      ...dots.slice(0, 400),
    ],
  };
}
