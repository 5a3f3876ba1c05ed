import { fill } from '../../session/wording.ts';
import { limits, margin, shownAs, time } from '../format.ts';
import type { Manner } from '../manner.ts';
import type { GateStory, JudgedStep, Reading, ReportModel, StopStory } from '../model.ts';
import { capital } from '../names.ts';
import { isFigure } from '../story/gates.ts';
import type { Block, Cell, Column, Row } from './blocks.ts';
import { means } from './means.ts';
import type { RuleBook } from './rules.ts';

const columnsIn = ({ words: { gates } }: Manner): readonly Column[] => [
  { title: gates.reading, width: 0.32 },
  { title: gates.at, width: 0.09, align: 'right' },
  { title: gates.value, width: 0.12, align: 'right' },
  { title: gates.limit, width: 0.21 },
  { title: gates.margin, width: 0.2 },
  { title: gates.rule, width: 0.06 },
];

const MOST_FAILED = 5;

/** Every gate, what was confirmed for it, and each reading with its limit, margin and rule. */
export function gatesSection({ gates, stops }: ReportModel, rules: RuleBook, manner: Manner): Block[] {
  const words = manner.words.gates;
  const rows = gates.flatMap(gate => [
    gateRow(gate, stops, manner),
    ...gate.readings.flatMap(step => stepRows(step, rules, manner)),
  ]);
  return [
    {
      type: 'section',
      title: words.title,
      note: words.note,
    },
    rows.length === 0
      ? { type: 'text', text: words.none, tone: 'muted' }
      : { type: 'table', columns: columnsIn(manner), rows },
  ];
}

function gateRow(
  { gate, holdsUp, met, metAtMs, by, confirmed, missing }: GateStory,
  stops: readonly StopStory[],
  manner: Manner,
): Row {
  const {
    words: { gates: words },
    name,
  } = manner;
  if (gate === null)
    return {
      kind: 'group',
      title: { text: holdsUp ? words.holdUp : words.figures },
      detail: holdsUp ? words.holdUpNote : words.figuresNote,
    };
  const state: Cell = met
    ? {
        text: fill(words.met, { time: time(metAtMs ?? 0), person: name.person(by ?? '') }),
        tone: 'good',
      }
    : { text: words.notMet, tone: 'bad', strong: true };
  const said =
    confirmed.length > 0 ? fill(words.confirmed, { steps: confirmed.map(name.step).join(', ') }) : '';
  const open = missing.length > 0 ? fill(words.missing, { steps: missing.map(name.step).join(', ') }) : '';
  const proved = gate === 'stopWordsProved' ? provedBy(stops, manner) : '';
  const detail = [said, proved, open].filter(text => text !== '').join(' ');
  return {
    kind: 'group',
    title: { text: capital(name.gate(gate)) },
    right: state,
    ...(detail === '' ? {} : { detail }),
  };
}

/** Who said the stop words to prove them, and by which means. */
function provedBy(stops: readonly StopStory[], manner: Manner): string {
  const drills = stops.filter(({ drill }) => drill);
  if (drills.length === 0) return '';
  const said = drills.map(stop =>
    fill(manner.words.gates.provedBy, {
      person: manner.name.person(stop.by),
      means: means(stop, manner),
      time: time(stop.timeMs),
    }),
  );
  return fill(manner.words.gates.proved, { list: said.join(manner.words.tables.between) });
}

function stepRows(
  { step, last, failedBefore, count: readings, lowestSi, highestSi }: JudgedStep,
  rules: RuleBook,
  manner: Manner,
): Row[] {
  const { name } = manner;
  const words = manner.words.gates;
  const shown = shownAs(last.unit, manner, last.quantity);
  const [lowest, highest] = [shown.value(lowestSi), shown.value(highestSi)];
  const n = String(readings);
  const range =
    lowest === highest
      ? fill(words.severalAlike, { n, value: lowest })
      : fill(words.several, { n, lowest, highest });
  const span = readings > 1 ? range : undefined;
  const hidden = failedBefore.length - MOST_FAILED;
  return [
    ...failedBefore
      .slice(0, MOST_FAILED)
      .map(reading => readingRow(reading, rules, manner, { text: name.step(step) })),
    ...(hidden > 0
      ? [
          {
            kind: 'cells' as const,
            cells: [
              {
                text: manner.counted(hidden, words.moreOutside),
                tone: 'bad' as const,
              },
              ...columnsIn(manner)
                .slice(1)
                .map(() => ({ text: '' })),
            ],
          },
        ]
      : []),
    readingRow(last, rules, manner, {
      text: name.step(step),
      ...(span === undefined ? {} : { note: span }),
    }),
  ];
}

function readingRow(reading: Reading, rules: RuleBook, manner: Manner, title: Cell): Row {
  const { verdict, si, timeMs, quantity } = reading;
  const { name } = manner;
  const words = manner.words.gates;
  const shown = shownAs(reading.unit, manner, quantity);
  // The limits are those of what was held against them, in its own unit.
  const held = verdict?.of;
  const inLimits = held ? shownAs(held.unit, manner) : shown;
  const bad = verdict?.met === false;
  const toned = (text: string): Cell => (bad ? { text, tone: 'bad', strong: true } : { text });
  const notAccepted =
    verdict?.why === undefined
      ? fill(words.notAccepted, { quantity: name.quantity(quantity) })
      : fill(words.notAcceptedWhy, { quantity: name.quantity(quantity), why: name.why(verdict.why) });
  const heldNote = held ? fill(words.held, { value: inLimits.value(held.value) }) : undefined;
  const note = [bad ? notAccepted : undefined, heldNote, title.note]
    .filter(text => text !== undefined)
    .join('; ');
  return {
    kind: 'cells',
    cells: [
      { ...title, ...(bad ? { tone: 'bad' as const } : {}), ...(note === '' ? {} : { note }) },
      { text: time(timeMs) },
      toned(shown.value(si)),
      { text: limits(verdict ?? {}, inLimits, manner) },
      verdict && !isFigure(verdict)
        ? toned(margin({ value: held?.value ?? si, verdict }, inLimits, manner))
        : { text: '\u2013' },
      { text: rules.mark(reading) },
    ],
  };
}
