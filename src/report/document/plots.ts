import type { UnitSystem } from '../../session/units.ts';
import { duration, shownAs } from '../format.ts';
import type { Reading, ReportModel } from '../model.ts';
import { capital, count, nameOf } from '../names.ts';
import { speedPlot } from '../plot/speed-plot.ts';
import { timeLineFigure } from '../plot/time-line-figure.ts';
import { timePlot } from '../plot/time-plot.ts';
import { phaseIds } from '../story/phases.ts';
import { pressureOverSpeed } from '../story/pressure-speed.ts';
import type { Block, Figure } from './blocks.ts';

const SMALL = { width: 252, height: 118 };
const WIDE = 515;

export function timeLineSection({ timeLine, durationMs }: ReportModel): Block[] {
  const reached = new Set(timeLine.phases.map(({ phase }) => phase)).size;
  return [
    { type: 'section', title: 'Time line' },
    {
      type: 'figures',
      perRow: 1,
      figures: [
        {
          title: '',
          alt: `${reached} of ${phaseIds.length} phases in ${duration(durationMs)}.`,
          scene: timeLineFigure(timeLine, WIDE),
        },
      ],
    },
  ];
}

/** Each quantity against time, and oil pressure over speed. */
export function plotsSection(model: ReportModel, units: UnitSystem): Block[] {
  const byQuantity = new Map<string, Reading[]>();
  for (const reading of model.readings) {
    const list = byQuantity.get(reading.quantity);
    if (list) list.push(reading);
    else byQuantity.set(reading.quantity, [reading]);
  }
  // What was read often says most.
  const ordered = [...byQuantity].sort(([, a], [, b]) => Math.min(b.length, 3) - Math.min(a.length, 3));
  const figures = [
    ...pressureFigure(model, units),
    ...ordered.flatMap(([quantity, readings]) => timeFigure(quantity, readings, model, units)),
  ];
  const section: Block = {
    type: 'section',
    title: 'Readings against time and limits',
    note: 'Dashed: limits; shaded red: outside them. Bands behind: phases, by their number in the time line.',
  };
  return figures.length === 0
    ? [
        { type: 'section', title: section.title },
        { type: 'text', text: 'No reading was taken.', tone: 'muted' },
      ]
    : [section, { type: 'figures', perRow: 2, figures }];
}

function timeFigure(
  quantity: string,
  readings: readonly Reading[],
  model: ReportModel,
  units: UnitSystem,
): Figure[] {
  const shown = shownAs(readings[0]?.unit ?? '', units);
  const bad = readings.filter(({ verdict }) => verdict?.met === false).length;
  const name = capital(nameOf.quantity(quantity));
  return [
    {
      title: shown.unit === '' ? name : `${name}, ${shown.unit}`,
      alt: `${name}: ${count(readings.length, 'reading')}, ${bad === 0 ? 'none' : bad} outside the limits.`,
      scene: timePlot(readings, model.timeLine.phases, shown.toUser, SMALL),
    },
  ];
}

function pressureFigure(model: ReportModel, units: UnitSystem): Figure[] {
  const points = pressureOverSpeed(model.readings, model.profile);
  if (points.length < 2) return [];
  const shown = shownAs('kPa', units);
  return [
    {
      title: `Oil pressure over engine speed, ${shown.unit} over rpm`,
      alt: `Oil pressure at ${count(points.length, 'speed')}, with the least pressure allowed at each.`,
      scene: speedPlot(
        points.map(({ rpm, pressureKpa, floorKpa, met }) => ({
          rpm,
          met,
          pressure: shown.toUser(pressureKpa),
          ...(floorKpa === undefined ? {} : { floor: shown.toUser(floorKpa) }),
        })),
        SMALL,
      ),
    },
  ];
}
