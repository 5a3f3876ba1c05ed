import { time } from '../format.ts';
import type { FaultStory, HoldStory, ReportModel, StopStory } from '../model.ts';
import { capital, count, nameOf } from '../names.ts';
import type { Block, Cell, Column, Row } from './blocks.ts';

/** More rows than anybody reads on paper; the exports hold them all. */
const MOST_ROWS = 40;

const cells = (...own: readonly (string | Cell)[]): Row => ({
  kind: 'cells',
  cells: own.map(cell => (typeof cell === 'string' ? { text: cell } : cell)),
});

/** A section with a table, or with the word that there is nothing. */
function tableSection(
  title: string,
  none: string,
  columns: readonly Column[],
  rows: readonly Row[],
  note?: string,
): Block[] {
  const section: Block = {
    type: 'section',
    title,
    ...(note === undefined || rows.length === 0 ? {} : { note }),
  };
  if (rows.length === 0) return [section, { type: 'text', text: none, tone: 'muted' }];
  const more = rows.length - MOST_ROWS;
  return [
    section,
    { type: 'table', columns, rows: rows.slice(0, MOST_ROWS) },
    ...(more > 0
      ? [{ type: 'text', text: `And ${more} more; all are in the JSON export.`, tone: 'warn' } as const]
      : []),
  ];
}

const at: Column = { title: 'At', width: 0.1, align: 'right' };

const holdKinds: Readonly<Record<HoldStory['kind'], string>> = {
  hold: 'hold, at least',
  rest: 'starter rests, at least',
  burst: 'starter turns, at most',
  watch: 'watched, at most',
};

const seconds = (ms: number) => (ms < 60_000 ? `${Math.round(ms / 100) / 10} s` : time(ms));

export function holdsSection({ holds }: ReportModel): Block[] {
  const title = 'Holds and cranking, planned and kept';
  if (holds === null)
    return [
      { type: 'section', title },
      { type: 'text', text: 'Cannot be told: the record does not replay.', tone: 'bad' },
    ];
  return tableSection(
    title,
    'Nothing was timed.',
    [
      at,
      { title: 'Step', width: 0.27 },
      { title: 'What', width: 0.23 },
      { title: 'Planned', width: 0.11, align: 'right' },
      { title: 'Took', width: 0.11, align: 'right' },
      { title: 'Paused', width: 0.18 },
    ],
    holds.map(({ fromMs, toMs, step, kind, plannedMs, pausedMs, kept }) =>
      cells(
        time(fromMs),
        nameOf.step(step),
        holdKinds[kind],
        seconds(plannedMs),
        kept
          ? { text: seconds(toMs - fromMs - pausedMs) }
          : { text: seconds(toMs - fromMs - pausedMs), tone: 'warn', strong: true },
        kept
          ? pausedMs > 0
            ? `${seconds(pausedMs)} on hold`
            : ''
          : {
              text: kind === 'hold' || kind === 'rest' ? 'broken off' : 'over its limit',
              tone: 'warn',
              strong: true,
            },
      ),
    ),
  );
}

export const faultsSection = ({ faults }: ReportModel): Block[] =>
  tableSection(
    'Fault codes',
    'No fault code was read.',
    [
      { title: 'Code', width: 0.16 },
      { title: 'What it is', width: 0.34 },
      { title: 'Story', width: 0.5 },
    ],
    faults.map(fault =>
      cells(
        { text: `SPN ${fault.spn} FMI ${fault.fmi}`, strong: true },
        { text: fault.meaning, ...(fault.because === '' ? {} : { note: fault.because }) },
        { text: faultStory(fault), ...(fault.presentAtEnd === true ? { tone: 'warn' as const } : {}) },
      ),
    ),
  );

function faultStory({ told, watchPassedMs, presentAtEnd }: FaultStory): string {
  const parts = told.map(({ timeMs, step, decision, accepted }) =>
    accepted === undefined
      ? `${time(timeMs)} ${nameOf.step(step)}: ${nameOf.decision(decision)}`
      : `${time(timeMs)} accepted by the supervisor: ${nameOf.reply(accepted)}`,
  );
  if (watchPassedMs !== undefined) parts.push(`${time(watchPassedMs)} said to have cleared`);
  parts.push(
    presentAtEnd === null
      ? 'whether it was there at the end cannot be told'
      : presentAtEnd
        ? 'not read as gone by the end'
        : 'not among the codes of the last round',
  );
  return `${parts.join('; ')}.`;
}

const triggers: Readonly<Record<string, string>> = {
  stop: 'called',
  clock: 'time was up',
  reply: 'by a reply',
  value: 'by a value',
  reading: 'by a reading outside its limits',
  unclear: 'no clear answer in time',
};

const calledBy = ({ by, via, trigger }: StopStory) =>
  trigger === 'stop'
    ? via === 'bus'
      ? 'The session itself, from the vehicle bus'
      : `${capital(nameOf.person(by))}, ${nameOf.via(via)}`
    : capital(triggers[trigger] ?? trigger);

export const stopsSection = ({ stops }: ReportModel): Block[] =>
  tableSection(
    'Stops and their causes',
    'Nobody called stop.',
    [
      at,
      { title: 'In step', width: 0.22 },
      { title: 'Called', width: 0.2 },
      { title: 'Cause', width: 0.18 },
      { title: 'After it', width: 0.3 },
    ],
    stops.map(stop =>
      cells(
        time(stop.timeMs),
        nameOf.step(stop.step),
        calledBy(stop),
        stop.drill
          ? { text: 'drill', tone: 'muted' }
          : { text: stop.cause === null ? 'not given' : nameOf.cause(stop.cause), tone: 'bad', strong: true },
        stop.drill
          ? `heard; went on at ${time(stop.wentOnMs ?? 0)}`
          : {
              text: stop.wentOnMs === undefined ? 'not gone on with' : `went on at ${time(stop.wentOnMs)}`,
              ...(stop.again.length === 0
                ? {}
                : { note: `Done again: ${stop.again.map(nameOf.step).join(', ')}` }),
            },
      ),
    ),
  );

export const skipsSection = ({ skips }: ReportModel): Block[] =>
  tableSection(
    'Skipped steps',
    'No step was skipped.',
    [at, { title: 'Step', width: 0.3 }, { title: 'Reason', width: 0.4 }, { title: 'By', width: 0.2 }],
    skips.map(({ timeMs, step, reason, by }) =>
      cells(time(timeMs), nameOf.step(step), nameOf.reply(reason), nameOf.person(by)),
    ),
  );

export const misheardSection = ({ misheard }: ReportModel): Block[] =>
  tableSection(
    'Misheard and repaired',
    'Everything was understood the first time.',
    [
      at,
      { title: 'Step', width: 0.22 },
      { title: 'Heard', width: 0.2 },
      { title: 'Why it did not count', width: 0.22 },
      { title: 'What counted then', width: 0.26 },
    ],
    misheard.map(({ timeMs, step, text, reason, repaired }) =>
      cells(
        time(timeMs),
        nameOf.step(step),
        text === '' ? { text: '(nothing)', tone: 'muted' } : `\u201c${text}\u201d`,
        nameOf.unclear(reason),
        repaired
          ? `\u201c${repaired.text}\u201d at ${time(repaired.timeMs)}`
          : { text: 'nothing', tone: 'muted' },
      ),
    ),
  );

export const cautionsSection = ({ cautions }: ReportModel): Block[] =>
  tableSection(
    'Cautions given',
    'No caution was given.',
    [at, { title: 'Said', width: 0.78 }, { title: 'Times', width: 0.12, align: 'right' }],
    cautions.map(({ timeMs, text, hazard, times }) =>
      cells(time(timeMs), { text, strong: hazard }, String(times)),
    ),
    'Bold: call-outs that went before everything else.',
  );

export function toolSection({ problems, refusals, trust }: ReportModel): Block[] {
  const rows: readonly { readonly timeMs: number; readonly text: string }[] = [
    ...problems,
    ...refusals.map(({ timeMs, text, unmet }) => ({
      timeMs,
      text: `${nameOf.step(text)} refused; not met: ${unmet.map(nameOf.gate).join(', ')}.`,
    })),
  ].toSorted((a, b) => a.timeMs - b.timeMs);
  const unread = trust.notUnderstood;
  const notes = [
    ...trust.remarks.map(({ sentence }) => sentence),
    ...(unread.length === 0
      ? []
      : [
          `${count(unread.length, 'entry', 'entries')} of the record could not be understood and ${unread.length === 1 ? 'is' : 'are'} not shown; the first is number ${unread[0]}.`,
        ]),
  ];
  if (rows.length + notes.length === 0) return [];
  return [
    { type: 'section', title: 'Notes on the tool and the record' },
    ...(rows.length === 0
      ? []
      : tableSection(
          '',
          '',
          [at, { title: 'What', width: 0.9 }],
          rows.map(({ timeMs, text }) => cells(time(timeMs), text)),
        ).slice(1)),
    ...(notes.length === 0
      ? []
      : [{ type: 'list', items: notes.slice(0, MOST_ROWS).map(text => ({ text })) } as const]),
  ];
}

export const computedSection = ({ computed }: ReportModel): Block[] =>
  computed.length === 0
    ? []
    : tableSection(
        'Figures calculated for this engine and this weather',
        '',
        [at, { title: 'Step', width: 0.26 }, { title: 'As it was shown', width: 0.64 }],
        computed.map(({ timeMs, step, text }) => cells(time(timeMs), nameOf.step(step), text)),
      );
