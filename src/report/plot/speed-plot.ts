import { roomy } from '../../engineering/axis.ts';
import type { Manner } from '../manner.ts';
import { frame, numberAxis, valueAxis } from './frame.ts';
import type { Scene } from './scene.ts';
import type { Point } from './thin.ts';

/** Oil pressure at one speed, both in the units of the plot. */
interface PressurePoint {
  readonly rpm: number;
  readonly pressure: number;
  /** The least pressure at this speed. */
  readonly floor?: number;
  readonly met: boolean;
}

const MOST_DOTS = 1000;

/** So many of the points at most, evenly taken; one that did not meet its floor is always among them. */
function spread(points: readonly PressurePoint[], most: number): readonly PressurePoint[] {
  const step = Math.ceil(points.length / most);
  return points.filter(({ met }, index) => !met || index % step === 0);
}

/**
 * Oil pressure over engine speed, with the floor under it.
 * @param points at least one
 */
export function speedPlot(
  points: readonly PressurePoint[],
  manner: Manner,
  size: { readonly width: number; readonly height: number },
): Scene {
  const ordered = points.toSorted((a, b) => a.rpm - b.rpm);
  const floors = ordered.filter(({ floor }) => floor !== undefined);
  const all = ordered.flatMap(({ pressure, floor }) => [pressure, floor ?? pressure]);
  const box = frame(
    size.width,
    size.height,
    roomy(
      ordered.map(({ rpm }) => rpm),
      200,
    ),
    roomy([0, ...all], 1),
  );
  const at = (rpm: number, pressure: number): Point => [box.x.at(rpm), box.y.at(pressure)];
  const floorLine = floors.map(({ rpm, floor }) => at(rpm, floor ?? 0));
  return {
    ...size,
    shapes: [
      ...valueAxis(box, manner),
      ...numberAxis(box, manner),
      { kind: 'line', points: floorLine, ink: 'limit', width: 0.9, dashed: true },
      ...(floorLine.length <= 60
        ? floorLine.map(([x, y]) => ({ kind: 'dot', x, y, radius: 1.1, ink: 'limit' }) as const)
        : []),
      ...spread(ordered, MOST_DOTS).map(({ rpm, pressure, met }) => {
        const [x, y] = at(rpm, pressure);
        return { kind: 'dot', x, y, radius: 2.2, ink: met ? 'reading' : 'bad' } as const;
      }),
    ],
  };
}
