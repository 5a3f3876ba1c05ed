import { linear, timeTicks } from '../../engineering/axis.ts';
import { duration, time } from '../format.ts';
import type { Manner } from '../manner.ts';
import type { PhaseSpan, Span, TimeLine } from '../model.ts';
import { phaseIds } from '../story/phases.ts';
import type { Ink, Scene, Shape } from './scene.ts';

const ROW = 11.5;
const SIZE = 7;
const LEFT = 128;
const RIGHT = 44;
const TOP = 4;
const BOTTOM = 14;
/** What lasted a moment is still seen. */
const LEAST_WIDTH = 1.2;

interface Line {
  readonly label: string;
  readonly note: string;
  readonly marks: readonly (Span & { readonly ink: Ink })[];
  readonly flags?: readonly { readonly atMs: number; readonly ink: Ink }[];
}

const total = (spans: readonly Span[]) => spans.reduce((sum, { fromMs, toMs }) => sum + toMs - fromMs, 0);

const phaseLine = (phase: string, spans: readonly PhaseSpan[], manner: Manner): Line => {
  const own = spans.filter(span => span.phase === phase);
  return {
    label: `${phaseIds.indexOf(phase) + 1}  ${manner.name.phase(phase)}`,
    note: own.length > 0 ? duration(total(own), manner) : manner.words.timeLine.notReached,
    marks: own.map(span => ({ ...span, ink: 'phase' })),
  };
};

/** What else happened, each kind on its own line; lines of things that did not happen are left out. */
function otherLines({ engine, stops, held, restartsMs }: TimeLine, manner: Manner): Line[] {
  const words = manner.words.timeLine;
  const running = (engine ?? []).filter(span => span.engine === 'running');
  const lines: Line[] = [
    {
      label: words.engine,
      note: duration(total(running), manner),
      marks: (engine ?? []).map(span => ({ ...span, ink: span.engine === 'running' ? 'engine' : 'crank' })),
    },
    {
      label: words.stops,
      note: '',
      marks: stops.map(span => ({ ...span, ink: span.drill ? 'drill' : 'stop' })),
      flags: stops.map(({ fromMs, drill }) => ({ atMs: fromMs, ink: drill ? 'drill' : 'stop' })),
    },
    {
      label: words.held,
      note: duration(total(held), manner),
      marks: held.map(span => ({ ...span, ink: 'held' })),
    },
    {
      label: words.restarted,
      note: '',
      marks: [],
      flags: restartsMs.map(atMs => ({ atMs, ink: 'held' })),
    },
  ];
  return lines.filter(({ marks, flags = [] }) => marks.length + flags.length > 0);
}

/** The session from left to right: one line for each phase, below them the engine, stops and holds. */
export function timeLineFigure(line: TimeLine, width: number, manner: Manner): Scene {
  const lines = [
    ...phaseIds.map(phase => phaseLine(phase, line.phases, manner)),
    ...otherLines(line, manner),
  ];
  const height = TOP + lines.length * ROW + BOTTOM;
  const x = linear(0, Math.max(1, line.endMs), LEFT, width - RIGHT);
  const bottom = TOP + lines.length * ROW;
  const grid = timeTicks(0, Math.max(1, line.endMs), 8);
  return {
    width,
    height,
    shapes: [
      ...grid.flatMap((atMs): Shape[] => [
        {
          kind: 'line',
          points: [
            [x.at(atMs), TOP],
            [x.at(atMs), bottom],
          ],
          ink: 'grid',
          width: 0.4,
        },
        {
          kind: 'text',
          x: x.at(atMs),
          y: bottom + SIZE + 3,
          text: time(atMs),
          size: SIZE - 0.5,
          ink: 'label',
          anchor: 'middle',
        },
      ]),
      ...lines.flatMap(({ label, note, marks, flags = [] }, index): Shape[] => {
        const y = TOP + index * ROW;
        return [
          {
            kind: 'text',
            x: 0,
            y: y + SIZE + 1,
            text: label,
            size: SIZE,
            ink: note === 'not reached' ? 'label' : 'axis',
          },
          ...marks.map((mark): Shape => {
            const left = x.at(mark.fromMs);
            const wide = Math.max(LEAST_WIDTH, x.at(mark.toMs) - left);
            return { kind: 'box', x: left, y: y + 2, width: wide, height: ROW - 4, ink: mark.ink };
          }),
          ...flags.map(
            ({ atMs, ink }): Shape => ({ kind: 'flag', x: x.at(atMs), y: y + ROW - 2.5, size: 6, ink }),
          ),
          { kind: 'text', x: width, y: y + SIZE + 1, text: note, size: SIZE, ink: 'label', anchor: 'end' },
        ];
      }),
      {
        kind: 'line',
        points: [
          [LEFT, bottom],
          [width - RIGHT, bottom],
        ],
        ink: 'axis',
        width: 0.6,
      },
    ],
  };
}
