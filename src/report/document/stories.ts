import { sentenceOf } from '../../record/index.ts';
import { fill, wordSaid } from '../../session/wording.ts';
import { limits, number, shownAs, time } from '../format.ts';
import type { Manner } from '../manner.ts';
import type { FaultStory, HoldStory, ReportModel, StopStory } from '../model.ts';
import { capital } from '../names.ts';
import { own } from '../own.ts';
import type { Block, Cell, Column, Row } from './blocks.ts';
import { means } from './means.ts';
import { cells, longTable, MOST_ROWS } from './tables.ts';

/** A section with a table, or with the word that there is nothing. */
function tableSection(
  { title, none, note }: { readonly title: string; readonly none: string; readonly note?: string },
  columns: readonly Column[],
  rows: readonly Row[],
  manner: Manner,
): Block[] {
  const section: Block = {
    type: 'section',
    title,
    ...(note === undefined || rows.length === 0 ? {} : { note }),
  };
  if (rows.length === 0) return [section, { type: 'text', text: none, tone: 'muted' }];
  return [section, ...longTable(columns, rows, manner)];
}

const at = ({ words }: Manner): Column => ({ title: words.tables.at, width: 0.1, align: 'right' });

const seconds = (ms: number, manner: Manner) =>
  ms < 60_000 ? `${number(ms / 1000, 1, manner)}${manner.words.unitGap}s` : time(ms);

export function holdsSection({ holds }: ReportModel, manner: Manner): Block[] {
  const { tables, holds: words, holdKinds } = manner.words;
  if (holds === null)
    return [
      { type: 'section', title: words.title },
      { type: 'text', text: words.unknown, tone: 'bad' },
    ];
  return tableSection(
    words,
    [
      at(manner),
      { title: tables.step, width: 0.27 },
      { title: words.what, width: 0.23 },
      { title: words.planned, width: 0.11, align: 'right' },
      { title: words.took, width: 0.11, align: 'right' },
      { title: words.paused, width: 0.18 },
    ],
    holds.map(hold => {
      const { fromMs, step, kind, plannedMs } = hold;
      return cells(
        time(fromMs),
        manner.name.step(step),
        holdKinds[kind],
        seconds(plannedMs, manner),
        ...tookCells(hold, manner),
      );
    }),
    manner,
  );
}

function tookCells({ fromMs, toMs, kind, pausedMs, kept }: HoldStory, manner: Manner): [Cell, Cell] {
  const words = manner.words.holds;
  const took = seconds(toMs - fromMs - pausedMs, manner);
  if (kept)
    return [
      { text: took },
      { text: pausedMs > 0 ? fill(words.onHold, { time: seconds(pausedMs, manner) }) : '' },
    ];
  const why = kind === 'hold' || kind === 'rest' ? words.brokenOff : words.overLimit;
  return [
    { text: took, tone: 'warn', strong: true },
    { text: why, tone: 'warn', strong: true },
  ];
}

export function faultsSection({ faults }: ReportModel, manner: Manner): Block[] {
  const words = manner.words.faults;
  return tableSection(
    words,
    [
      { title: words.code, width: 0.16 },
      { title: words.what, width: 0.34 },
      { title: words.story, width: 0.5 },
    ],
    faults.map(fault =>
      cells(
        { text: `SPN ${fault.spn} FMI ${fault.fmi}`, strong: true },
        {
          text: own(manner.language.failureModes, String(fault.fmi)) ?? fault.meaning,
          ...(fault.because === '' ? {} : { note: fault.because }),
        },
        {
          text: faultStory(fault, manner),
          ...(fault.presentAtEnd === true ? { tone: 'warn' as const } : {}),
        },
      ),
    ),
    manner,
  );
}

function faultStory({ told, watchPassedMs, presentAtEnd }: FaultStory, { words, name }: Manner): string {
  const { faults } = words;
  const parts = told.map(({ timeMs, step, decision, accepted }) =>
    accepted === undefined
      ? fill(faults.judged, {
          time: time(timeMs),
          step: name.step(step),
          decision: name.decision(decision),
        })
      : fill(faults.accepted, { time: time(timeMs), reason: name.reply(accepted) }),
  );
  if (watchPassedMs !== undefined) parts.push(fill(faults.cleared, { time: time(watchPassedMs) }));
  parts.push(presentAtEnd === null ? faults.endUnknown : presentAtEnd ? faults.atEnd : faults.gone);
  return `${parts.join(words.tables.between)}.`;
}

const calledBy = (stop: StopStory, manner: Manner): string => {
  const { words, name } = manner;
  const { by, via, trigger, reading } = stop;
  if (reading) {
    const shown = shownAs(reading.unit, manner, reading.quantity);
    return fill(words.stops.byReading, {
      quantity: name.quantity(reading.quantity),
      value: shown.value(reading.si),
      limit: limits(reading, shown, manner),
    });
  }
  if (trigger !== 'stop') return capital(name.trigger(trigger));
  return via === 'bus'
    ? words.stops.byBus
    : fill(words.stops.by, { person: capital(name.person(by)), via: means(stop, manner) });
};

/** Each stop with its cause and all that followed from it; the drills are only counted, and put away. */
export function stopsSection({ stops }: ReportModel, manner: Manner): Block[] {
  const words = manner.words.stops;
  const unplanned = stops.filter(({ drill }) => !drill);
  const drills = stops.filter(({ drill }) => drill);
  return [
    { type: 'section', title: words.title },
    ...(unplanned.length === 0
      ? [{ type: 'text', text: stops.length === 0 ? words.none : words.onlyDrills, tone: 'muted' } as const]
      : longTable(
          [{ title: words.cause, width: 1 }],
          unplanned.map(stop => stopRow(stop, manner)),
          manner,
        )),
    ...(drills.length === 0 ? [] : [drillsFolded(drills, manner)]),
  ];
}

function stopRow(stop: StopStory, manner: Manner): Row {
  const { name, words } = manner;
  const { timeMs, step, cause, found, wentOnMs, again } = stop;
  const named = cause === null ? words.stops.noCause : name.cause(cause);
  const sentences = [
    fill(words.stops.inStep, { step: name.step(step), called: calledBy(stop, manner) }),
    ...(found !== undefined && cause !== null && found !== cause
      ? [fill(words.stops.renamed, { found: name.cause(found), cause: named })]
      : []),
    ...(again.length === 0 ? [] : [fill(words.stops.again, { steps: again.map(name.step).join(', ') })]),
  ];
  return {
    kind: 'group',
    title: {
      text: fill(words.stops.head, { time: time(timeMs), cause: named }),
      tone: 'bad',
      strong: true,
    },
    right: {
      text:
        wentOnMs === undefined ? words.stops.notGoneOn : fill(words.stops.wentOn, { time: time(wentOnMs) }),
    },
    detail: sentences.join(' '),
  };
}

function drillsFolded(drills: readonly StopStory[], manner: Manner): Block {
  const { name } = manner;
  const words = manner.words.stops;
  return {
    type: 'folded',
    summary: manner.counted(drills.length, words.drills),
    blocks: longTable(
      [
        at(manner),
        { title: words.step, width: 0.3 },
        { title: words.called, width: 0.3 },
        { title: words.after, width: 0.3 },
      ],
      drills.map(stop =>
        cells(
          time(stop.timeMs),
          name.step(stop.step),
          calledBy(stop, manner),
          fill(words.drillHeard, { time: time(stop.wentOnMs ?? 0) }),
        ),
      ),
      manner,
    ),
  };
}

/** What could hardly be true, and what became of it. */
export function doubtsSection({ doubts }: ReportModel, manner: Manner): Block[] {
  const { name } = manner;
  const { tables, doubts: words } = manner.words;
  if (doubts.length === 0) return [];
  return tableSection(
    { ...words, none: '' },
    [
      at(manner),
      { title: tables.step, width: 0.24 },
      { title: words.said, width: 0.24 },
      { title: words.expected, width: 0.2 },
      { title: words.became, width: 0.22 },
    ],
    doubts.map(({ timeMs, step, quantity, reply, si, unit, vouchedBy, ...range }) => {
      const shown = shownAs(unit, manner, quantity);
      const value = si === undefined ? '' : shown.value(si);
      const what = reply === undefined ? name.quantity(quantity ?? '') : name.reply(reply);
      return cells(
        time(timeMs),
        name.step(step),
        value === '' ? capital(what) : fill(words.value, { what: capital(what), value }),
        limits(range, shown, manner),
        vouchedBy === undefined ? words.notTaken : fill(words.vouched, { person: name.person(vouchedBy) }),
      );
    }),
    manner,
  );
}

/** Where this start stood among the shop's earlier ones; nothing where these were too few to say. */
export function besideSection({ besideOthers }: ReportModel, manner: Manner): Block[] {
  const { name } = manner;
  const { tables, besideOthers: words } = manner.words;
  if (besideOthers.length === 0) return [];
  return tableSection(
    { ...words, none: '' },
    [
      at(manner),
      { title: tables.step, width: 0.26 },
      { title: words.value, width: 0.14, align: 'right' },
      { title: words.usual, width: 0.22 },
      { title: words.place, width: 0.28 },
    ],
    besideOthers.map(({ timeMs, step, value, unit, others, above, below, min, max, within }) => {
      const shown = shownAs(unit, manner);
      const blanks = { above: String(above), below: String(below), all: String(others) };
      return cells(
        time(timeMs),
        name.step(step),
        { text: shown.value(value), ...(within ? {} : { tone: 'warn' as const, strong: true }) },
        limits({ min: Math.max(0, min), max }, shown, manner),
        fill(within ? words.middle : words.unlike, blanks),
      );
    }),
    manner,
  );
}

export function skipsSection({ skips }: ReportModel, manner: Manner): Block[] {
  const { name } = manner;
  const { tables, skips: words } = manner.words;
  return tableSection(
    words,
    [
      at(manner),
      { title: tables.step, width: 0.3 },
      { title: words.reason, width: 0.4 },
      { title: words.by, width: 0.2 },
    ],
    skips.map(({ timeMs, step, reason, by }) =>
      cells(time(timeMs), name.step(step), name.reply(reason), name.person(by)),
    ),
    manner,
  );
}

/** Folded: how often something was not understood says little of the engine; what nothing repaired stands open. */
export function misheardSection({ misheard }: ReportModel, manner: Manner): Block[] {
  const { misheard: words } = manner.words;
  const section: Block = { type: 'section', title: words.title };
  if (misheard.length === 0) return [section, { type: 'text', text: words.none, tone: 'muted' }];
  const lost = misheard.filter(({ repaired }) => repaired === undefined).length;
  const repaired = lost === 0 ? words.allRepaired : manner.counted(lost, words.notRepaired);
  return [
    section,
    {
      type: 'folded',
      summary: manner.counted(misheard.length, words.folded, { repaired }),
      blocks: misheardTable(misheard, manner),
    },
  ];
}

function misheardTable(misheard: ReportModel['misheard'], manner: Manner): Block[] {
  const { name } = manner;
  const { tables, quoted, misheard: words } = manner.words;
  return longTable(
    [
      at(manner),
      { title: tables.step, width: 0.22 },
      { title: words.heard, width: 0.2 },
      { title: words.why, width: 0.22 },
      { title: words.repairedBy, width: 0.26 },
    ],
    misheard.map(({ timeMs, step, text, reason, repaired }) =>
      cells(
        time(timeMs),
        name.step(step),
        text === '' ? { text: words.nothingHeard, tone: 'muted' } : fill(quoted, { text }),
        name.unclear(reason),
        repaired
          ? fill(words.repaired, { text: fill(quoted, { text: repaired.text }), time: time(repaired.timeMs) })
          : { text: words.nothing, tone: 'muted' },
      ),
    ),
    manner,
  );
}

export function cautionsSection({ cautions }: ReportModel, manner: Manner): Block[] {
  const words = manner.words.cautions;
  return tableSection(
    words,
    [at(manner), { title: words.said, width: 0.78 }, { title: words.times, width: 0.12, align: 'right' }],
    cautions.map(({ timeMs, text, hazard, times }) =>
      cells(time(timeMs), { text, strong: hazard }, String(times)),
    ),
    manner,
  );
}

export function toolSection(
  { problems, refusals, notCarriedOut, trust }: ReportModel,
  manner: Manner,
): Block[] {
  const { name } = manner;
  const { tool: words, findings } = manner.words;
  const rows: readonly { readonly timeMs: number; readonly text: string }[] = [
    ...problems,
    ...refusals.map(({ timeMs, text, unmet }) => ({
      timeMs,
      text: fill(words.refused, { step: name.step(text), gates: unmet.map(name.gate).join(', ') }),
    })),
    ...notCarriedOut.map(({ timeMs, device, role, cause, why }) => ({
      timeMs,
      text: fill(words.notCarriedOut, {
        device,
        person: name.person(role),
        cause: name.cause(cause),
        why: name.notCarriedOut(why),
      }),
    })),
  ].toSorted((a, b) => a.timeMs - b.timeMs);
  const unread = trust.notUnderstood;
  const notes = [
    ...trust.remarks.map(({ finding }) => sentenceOf(findings.remarks, finding)),
    ...(unread.length === 0
      ? []
      : [manner.counted(unread.length, words.notUnderstood, { first: String(unread[0]) })]),
  ];
  if (rows.length + notes.length === 0) return [];
  return [
    { type: 'section', title: words.title },
    ...(rows.length === 0
      ? []
      : longTable(
          [at(manner), { title: words.what, width: 0.9 }],
          rows.map(({ timeMs, text }) => cells(time(timeMs), text)),
          manner,
        )),
    ...(notes.length === 0
      ? []
      : [{ type: 'list', items: notes.slice(0, MOST_ROWS).map(text => ({ text })) } as const]),
  ];
}

export function computedSection({ computed }: ReportModel, manner: Manner): Block[] {
  const { name, language, units } = manner;
  const { tables, computed: words } = manner.words;
  return computed.length === 0
    ? []
    : [
        { type: 'section', title: words.title },
        ...longTable(
          [at(manner), { title: tables.step, width: 0.26 }, { title: words.shown, width: 0.64 }],
          computed.map(({ timeMs, step, said }) =>
            cells(time(timeMs), name.step(step), wordSaid(said, language, units).shown),
          ),
          manner,
        ),
      ];
}
