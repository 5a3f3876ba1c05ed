import type { UnitSystem } from '../../session/units.ts';
import { duration, shownAs, time } from '../format.ts';
import type { Reading, ReportModel } from '../model.ts';
import { capital, count, nameOf } from '../names.ts';
import { rangeStrip } from '../plot/range-strip.ts';
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
    {
      type: 'section',
      title: 'Time line',
      note: 'Session time. Engine: amber while the starter turned it, green while it ran.',
    },
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
  const once = [...byQuantity.values()].flatMap(list => (list.length === 1 ? list : []));
  const often = [...byQuantity].filter(([, list]) => list.length > 1);
  const figures = [
    ...pressureFigure(model, units),
    ...often.flatMap(([quantity, readings]) => timeFigure(quantity, readings, model, units)),
  ];
  const title = 'Readings against time and limits';
  if (figures.length + once.length === 0)
    return [
      { type: 'section', title },
      { type: 'text', text: 'No reading was taken.', tone: 'muted' },
    ];
  return [
    {
      type: 'section',
      title,
      note: 'Dashed: limits; shaded red: outside them. Bands behind: phases, by their number in the time line.',
    },
    ...(figures.length === 0 ? [] : [{ type: 'figures', perRow: 2, figures } as const]),
    ...(once.length === 0
      ? []
      : [{ type: 'figures', perRow: 1, figures: [stripFigure(once, units)] } as const]),
  ];
}

function stripFigure(readings: readonly Reading[], units: UnitSystem): Figure {
  const rows = readings.map(({ quantity, si, unit, verdict, timeMs }) => {
    const shown = shownAs(unit, units);
    const { min, max } = verdict ?? {};
    return {
      label: capital(nameOf.quantity(quantity)),
      text: `${shown.value(si)} at ${time(timeMs)}`,
      value: shown.toUser(si),
      met: verdict?.met !== false,
      ...(min === undefined ? {} : { min: shown.toUser(min), minText: shown.value(min) }),
      ...(max === undefined ? {} : { max: shown.toUser(max), maxText: shown.value(max) }),
    };
  });
  return {
    title: 'Read once: the grey bar is what the limits allow',
    alt: rows.map(({ label, text }) => `${label}: ${text}`).join('; '),
    scene: rangeStrip(rows, WIDE),
  };
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
      scene: timePlot(readings, model.timeLine, shown.toUser, SMALL),
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
