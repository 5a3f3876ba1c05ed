import { linear, type Scale, ticks, timeTicks } from '../../engineering/axis.ts';
import { number, time } from '../format.ts';
import type { Manner } from '../manner.ts';
import type { PhaseSpan } from '../model.ts';
import { phaseIds } from '../story/phases.ts';
import type { Shape } from './scene.ts';

export const LABEL = 6.5;
const LEFT = 34;
const RIGHT = 8;
const TOP = 12;
const BOTTOM = 14;
/** A phase narrower than this gets no number above it. */
const NUMBERED_FROM = 9;

export interface Frame {
  readonly x: Scale;
  readonly y: Scale;
  readonly left: number;
  readonly right: number;
  readonly top: number;
  readonly bottom: number;
}

interface Range {
  readonly from: number;
  readonly to: number;
}

export function frame(width: number, height: number, x: Range, y: Range): Frame {
  const [left, right, top, bottom] = [LEFT, width - RIGHT, TOP, height - BOTTOM];
  return {
    x: linear(x.from, x.to, left, right),
    y: linear(y.from, y.to, bottom, top),
    left,
    right,
    top,
    bottom,
  };
}

/** The phases as bands behind a plot over time, each with its number. */
export function phaseBands({ x, top, bottom }: Frame, phases: readonly PhaseSpan[]): Shape[] {
  return phases
    .filter(({ fromMs, toMs }) => toMs > x.from && fromMs < x.to)
    .flatMap(({ phase, fromMs, toMs }) => {
      const index = phaseIds.indexOf(phase);
      const [left, right] = [x.at(fromMs), x.at(toMs)];
      const band: Shape = {
        kind: 'box',
        x: left,
        y: top,
        width: right - left,
        height: bottom - top,
        ink: index % 2 === 0 ? 'bandA' : 'bandB',
      };
      const label: Shape = {
        kind: 'text',
        x: (left + right) / 2,
        y: top - 3,
        text: String(index + 1),
        size: LABEL,
        ink: 'label',
        anchor: 'middle',
      };
      return right - left >= NUMBERED_FROM ? [band, label] : [band];
    });
}

/** Values at the left with lines across, and the axis below. */
export function valueAxis({ y, left, right, bottom }: Frame, manner: Manner): Shape[] {
  const values = ticks(y.from, y.to, 4);
  const step = Math.abs((values[1] ?? 1) - (values[0] ?? 0)) || 1;
  const decimals = Math.min(6, Math.max(0, -Math.floor(Math.log10(step))));
  return [
    ...values.flatMap((value): Shape[] => [
      {
        kind: 'line',
        points: [
          [left, y.at(value)],
          [right, y.at(value)],
        ],
        ink: 'grid',
        width: 0.4,
      },
      {
        kind: 'text',
        x: left - 4,
        y: y.at(value) + LABEL / 3,
        text: number(value, decimals, manner),
        size: LABEL,
        ink: 'label',
        anchor: 'end',
      },
    ]),
    {
      kind: 'line',
      points: [
        [left, bottom],
        [right, bottom],
      ],
      ink: 'axis',
      width: 0.6,
    },
  ];
}

const below = (frame: Frame, values: readonly number[], text: (value: number) => string): Shape[] =>
  values.flatMap((value): Shape[] => [
    {
      kind: 'line',
      points: [
        [frame.x.at(value), frame.bottom],
        [frame.x.at(value), frame.bottom + 2.5],
      ],
      ink: 'axis',
      width: 0.6,
    },
    {
      kind: 'text',
      x: frame.x.at(value),
      y: frame.bottom + 3 + LABEL,
      text: text(value),
      size: LABEL,
      ink: 'label',
      anchor: 'middle',
    },
  ]);

export const timeAxis = (frame: Frame): Shape[] => below(frame, timeTicks(frame.x.from, frame.x.to, 5), time);

export const numberAxis = (frame: Frame, manner: Manner): Shape[] =>
  below(frame, ticks(frame.x.from, frame.x.to, 5), value => number(value, 0, manner));
