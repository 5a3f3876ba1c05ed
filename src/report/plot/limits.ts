import type { PhaseSpan, Reading } from '../model.ts';
import type { Frame } from './frame.ts';
import type { Shape } from './scene.ts';

/** A limit holds half-way to the readings beside it, and never outside the phase in which it was set. */
function reach(judged: readonly Reading[], index: number, phases: readonly PhaseSpan[], frame: Frame) {
  const own = judged[index];
  if (!own) return { fromMs: frame.x.from, toMs: frame.x.from };
  const before = judged[index - 1];
  const after = judged[index + 1];
  const phase = phases.find(({ fromMs, toMs }) => own.timeMs >= fromMs && own.timeMs <= toMs);
  const least = phase?.fromMs ?? frame.x.from;
  const most = phase?.toMs ?? frame.x.to;
  return {
    fromMs: before ? Math.max(least, (before.timeMs + own.timeMs) / 2) : least,
    toMs: after ? Math.min(most, (after.timeMs + own.timeMs) / 2) : most,
  };
}

/** The limits of each judged reading as a dashed line, with what lies beyond them shaded. */
export function limitShapes(
  frame: Frame,
  readings: readonly Reading[],
  phases: readonly PhaseSpan[],
  toUser: (si: number) => number,
): Shape[] {
  const judged = readings.filter(({ verdict }) => verdict !== undefined);
  return judged.flatMap(({ verdict }, index): Shape[] => {
    const { fromMs, toMs } = reach(judged, index, phases, frame);
    const [left, right] = [frame.x.at(fromMs), frame.x.at(toMs)];
    if (!(right > left)) return [];
    const line = (limit: number | undefined, edge: number): Shape[] => {
      if (limit === undefined || !Number.isFinite(limit)) return [];
      const value = toUser(limit);
      // A limit far outside the picture would only press the readings flat.
      if (value < frame.y.from || value > frame.y.to) return [];
      const y = frame.y.at(value);
      return [
        {
          kind: 'box',
          x: left,
          y: Math.min(y, edge),
          width: right - left,
          height: Math.abs(edge - y),
          ink: 'beyond',
        },
        {
          kind: 'line',
          points: [
            [left, y],
            [right, y],
          ],
          ink: 'limit',
          width: 0.9,
          dashed: true,
        },
      ];
    };
    return [...line(verdict?.min, frame.bottom), ...line(verdict?.max, frame.top)];
  });
}
