import { fill } from '../../session/wording.ts';
import { duration, shownAs, time } from '../format.ts';
import type { Manner } from '../manner.ts';
import type { Reading, ReportModel } from '../model.ts';
import { capital } from '../names.ts';
import { rangeStrip } from '../plot/range-strip.ts';
import { speedPlot } from '../plot/speed-plot.ts';
import { timeLineFigure } from '../plot/time-line-figure.ts';
import { timePlot } from '../plot/time-plot.ts';
import { phaseIds } from '../story/phases.ts';
import { pressureOverSpeed } from '../story/pressure-speed.ts';
import type { Block, Figure } from './blocks.ts';

const SMALL = { width: 252, height: 118 };
const WIDE = 515;

export function timeLineSection({ timeLine, durationMs }: ReportModel, manner: Manner): Block[] {
  const words = manner.words.timeLine;
  const reached = new Set(timeLine.phases.map(({ phase }) => phase)).size;
  return [
    {
      type: 'section',
      title: words.title,
      note: words.note,
    },
    {
      type: 'figures',
      perRow: 1,
      figures: [
        {
          title: '',
          alt: fill(words.alt, {
            reached: String(reached),
            all: String(phaseIds.length),
            time: duration(durationMs, manner),
          }),
          scene: timeLineFigure(timeLine, WIDE, manner),
        },
      ],
    },
  ];
}

/** Each quantity against time, and oil pressure over speed. */
export function plotsSection(model: ReportModel, manner: Manner): Block[] {
  const words = manner.words.plots;
  const byQuantity = new Map<string, Reading[]>();
  // What the microphone heard has a section of its own.
  for (const reading of model.readings.filter(({ source }) => source !== 'ear')) {
    const list = byQuantity.get(reading.quantity);
    if (list) list.push(reading);
    else byQuantity.set(reading.quantity, [reading]);
  }
  const once = [...byQuantity.values()].flatMap(list => (list.length === 1 ? list : []));
  const often = [...byQuantity].filter(([, list]) => list.length > 1);
  const figures = [
    ...pressureFigure(model, manner),
    ...often.flatMap(([quantity, readings]) => timeFigure(quantity, readings, model, manner)),
  ];
  const { title } = words;
  if (figures.length + once.length === 0)
    return [
      { type: 'section', title },
      { type: 'text', text: words.none, tone: 'muted' },
    ];
  return [
    {
      type: 'section',
      title,
      note: words.note,
    },
    ...(figures.length === 0 ? [] : [{ type: 'figures', perRow: 2, figures } as const]),
    ...(once.length === 0
      ? []
      : [{ type: 'figures', perRow: 1, figures: [stripFigure(once, manner)] } as const]),
  ];
}

function stripFigure(readings: readonly Reading[], manner: Manner): Figure {
  const { words, name } = manner;
  const rows = readings.map(({ quantity, si, unit, verdict, timeMs }) => {
    const shown = shownAs(unit, manner);
    const { min, max } = verdict ?? {};
    return {
      label: capital(name.quantity(quantity)),
      text: fill(words.plots.valueAt, { value: shown.value(si), time: time(timeMs) }),
      value: shown.toUser(si),
      met: verdict?.met !== false,
      ...(min === undefined ? {} : { min: shown.toUser(min), minText: shown.value(min) }),
      ...(max === undefined ? {} : { max: shown.toUser(max), maxText: shown.value(max) }),
    };
  });
  return {
    title: words.plots.once,
    alt: rows.map(({ label, text }) => fill(words.plots.labelled, { label, text })).join('; '),
    scene: rangeStrip(rows, WIDE),
  };
}

function timeFigure(
  quantity: string,
  readings: readonly Reading[],
  model: ReportModel,
  manner: Manner,
): Figure[] {
  const words = manner.words.plots;
  const shown = shownAs(readings[0]?.unit ?? '', manner);
  const bad = readings.filter(({ verdict }) => verdict?.met === false).length;
  const name = capital(manner.name.quantity(quantity));
  const counted = manner.counted(readings.length, words.alt, { quantity: name });
  return [
    {
      title: shown.unit === '' ? name : fill(words.quantityIn, { quantity: name, unit: shown.unit }),
      alt: fill(bad === 0 ? words.altAllInside : words.altOutside, { readings: counted, bad: String(bad) }),
      scene: timePlot(readings, model.timeLine, shown.toUser, manner, SMALL),
    },
  ];
}

function pressureFigure(model: ReportModel, manner: Manner): Figure[] {
  const words = manner.words.plots;
  const points = pressureOverSpeed(model.readings, model.profile);
  if (points.length < 2) return [];
  const shown = shownAs('kPa', manner);
  return [
    {
      title: fill(words.pressure, { unit: shown.unit, speedUnit: shownAs('rpm', manner).unit }),
      alt: manner.counted(points.length, words.pressureAlt),
      scene: speedPlot(
        points.map(({ rpm, pressureKpa, floorKpa, met }) => ({
          rpm,
          met,
          pressure: shown.toUser(pressureKpa),
          ...(floorKpa === undefined ? {} : { floor: shown.toUser(floorKpa) }),
        })),
        manner,
        SMALL,
      ),
    },
  ];
}
