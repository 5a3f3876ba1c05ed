import type { Scene, Shape } from './scene.ts';

/** A quantity that was read once, in the user's unit. */
interface StripRow {
  readonly label: string;
  readonly text: string;
  readonly value: number;
  readonly min?: number;
  readonly max?: number;
  readonly minText?: string;
  readonly maxText?: string;
  readonly met: boolean;
}

const ROW = 20;
const SIZE = 7;
const LEFT = 128;
const RIGHT = 74;
/** Room for values beyond a limit, as a share of the bar. */
const BEYOND = 0.15;

/** A scale on which both limits have their place; with one limit only, the value stands as far from it as it is. */
function scaleOf({ value, min, max }: StripRow): { readonly low: number; readonly high: number } {
  if (min !== undefined && max !== undefined) return { low: min, high: max };
  const limit = min ?? max ?? value;
  const span = Math.max(Math.abs(value - limit) * 1.5, Math.abs(limit) * 0.2, 1e-9);
  return min === undefined ? { low: limit - span, high: limit } : { low: limit, high: limit + span };
}

/** Each reading as a mark on a bar that is what its limits allow; red is outside. Every row has its own scale. */
export function rangeStrip(rows: readonly StripRow[], width: number): Scene {
  const right = width - RIGHT;
  const margin = (right - LEFT) * BEYOND;
  const [start, end] = [LEFT + margin, right - margin];
  const shapes = rows.flatMap((row, index): Shape[] => {
    const y = index * ROW + 3;
    const { low, high } = scaleOf(row);
    const at = (value: number) =>
      Math.min(right, Math.max(LEFT, start + ((value - low) / (high - low || 1)) * (end - start)));
    const beyond = (from: number, to: number): Shape => ({
      kind: 'box',
      x: from,
      y,
      width: to - from,
      height: 7,
      ink: 'beyond',
    });
    const limit = (value: number, text: string): Shape[] => [
      {
        kind: 'line',
        points: [
          [at(value), y - 1],
          [at(value), y + 8],
        ],
        ink: 'limit',
        width: 0.9,
      },
      { kind: 'text', x: at(value), y: y + 14.5, text, size: SIZE - 1, ink: 'label', anchor: 'middle' },
    ];
    return [
      { kind: 'text', x: 0, y: y + SIZE - 0.5, text: row.label, size: SIZE, ink: 'axis' },
      { kind: 'box', x: LEFT, y, width: right - LEFT, height: 7, ink: 'bandB' },
      ...(row.min === undefined ? [] : [beyond(LEFT, at(row.min)), ...limit(row.min, row.minText ?? '')]),
      ...(row.max === undefined ? [] : [beyond(at(row.max), right), ...limit(row.max, row.maxText ?? '')]),
      { kind: 'dot', x: at(row.value), y: y + 3.5, radius: 3, ink: row.met ? 'reading' : 'bad' },
      {
        kind: 'text',
        x: width,
        y: y + SIZE - 0.5,
        text: row.text,
        size: SIZE,
        ink: row.met ? 'axis' : 'bad',
        anchor: 'end',
      },
    ];
  });
  return { width, height: rows.length * ROW + 2, shapes };
}
