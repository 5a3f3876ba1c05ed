import type { UnitSystem } from '../../session/units.ts';
import { limits, margin, shownAs, time } from '../format.ts';
import type { GateStory, JudgedStep, Reading, ReportModel } from '../model.ts';
import { capital, count, nameOf } from '../names.ts';
import type { Block, Cell, Column, Row } from './blocks.ts';
import type { RuleBook } from './rules.ts';

const columns: readonly Column[] = [
  { title: 'Reading', width: 0.34 },
  { title: 'At', width: 0.09, align: 'right' },
  { title: 'Value', width: 0.14, align: 'right' },
  { title: 'Limit', width: 0.23 },
  { title: 'Margin', width: 0.13, align: 'right' },
  { title: 'Rule', width: 0.07 },
];

const MOST_FAILED = 5;

/** Every gate, what was confirmed for it, and each reading with its limit, margin and rule. */
export function gatesSection({ gates }: ReportModel, units: UnitSystem, rules: RuleBook): Block[] {
  const rows = gates.flatMap(gate => [
    gateRow(gate),
    ...gate.readings.flatMap(step => stepRows(step, units, rules)),
  ]);
  return [
    {
      type: 'section',
      title: 'Gates and readings',
      note: 'Times are session time. Numbers in brackets name the rule, listed below.',
    },
    rows.length === 0
      ? { type: 'text', text: 'No gate was reached.', tone: 'muted' }
      : { type: 'table', columns, rows },
  ];
}

function gateRow({ gate, met, metAtMs, by, confirmed, missing }: GateStory): Row {
  if (gate === null) return { kind: 'group', title: { text: 'Readings that open no gate' } };
  const state: Cell = met
    ? { text: `met at ${time(metAtMs ?? 0)}, ${nameOf.person(by ?? '')}`, tone: 'good' }
    : { text: 'NOT MET', tone: 'bad', strong: true };
  const said = confirmed.length > 0 ? `Confirmed: ${confirmed.map(nameOf.step).join(', ')}.` : '';
  const open = missing.length > 0 ? `Missing: ${missing.map(nameOf.step).join(', ')}.` : '';
  const detail = [said, open].filter(text => text !== '').join(' ');
  return {
    kind: 'group',
    title: { text: capital(nameOf.gate(gate)) },
    right: state,
    ...(detail === '' ? {} : { detail }),
  };
}

function stepRows(
  { step, last, failedBefore, count: readings, lowestSi, highestSi }: JudgedStep,
  units: UnitSystem,
  rules: RuleBook,
): Row[] {
  const shown = shownAs(last.unit, units);
  const [lowest, highest] = [shown.value(lowestSi), shown.value(highestSi)];
  const range = lowest === highest ? `all ${lowest}` : `${lowest} to ${highest}`;
  const span = readings > 1 ? `${readings} readings, ${range}` : undefined;
  const hidden = failedBefore.length - MOST_FAILED;
  return [
    ...failedBefore
      .slice(0, MOST_FAILED)
      .map(reading => readingRow(reading, units, rules, { text: nameOf.step(step) })),
    ...(hidden > 0
      ? [
          {
            kind: 'cells' as const,
            cells: [
              {
                text: `${count(hidden, 'more reading')} outside; all are in the JSON and CSV exports`,
                tone: 'bad' as const,
              },
              ...columns.slice(1).map(() => ({ text: '' })),
            ],
          },
        ]
      : []),
    readingRow(last, units, rules, {
      text: nameOf.step(step),
      ...(span === undefined ? {} : { note: span }),
    }),
  ];
}

function readingRow(reading: Reading, units: UnitSystem, rules: RuleBook, title: Cell): Row {
  const { verdict, si, timeMs, quantity } = reading;
  const shown = shownAs(reading.unit, units);
  const bad = verdict?.met === false;
  const toned = (text: string): Cell => (bad ? { text, tone: 'bad', strong: true } : { text });
  const why = bad
    ? `${nameOf.quantity(quantity)} NOT accepted${verdict?.why === undefined ? '' : `: ${verdict.why}`}`
    : undefined;
  const note = [why, title.note].filter(text => text !== undefined).join('; ');
  return {
    kind: 'cells',
    cells: [
      { ...title, ...(bad ? { tone: 'bad' as const } : {}), ...(note === '' ? {} : { note }) },
      { text: time(timeMs) },
      toned(shown.value(si)),
      { text: limits(verdict ?? {}, shown) },
      toned(margin(reading, shown)),
      { text: rules.mark(reading) },
    ],
  };
}
