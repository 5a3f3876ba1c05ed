import { availableParallelism, loadavg } from 'node:os';
import { type FaultKind, faultKinds } from './faults.ts';
import type { Kept, RecordFound } from './records.ts';
import type { Between, MeasuredStop } from './stops.ts';

/** Everything that a run found out. */
export interface Outcome {
  readonly seed: number;
  readonly bays: number;
  readonly ranMinutes: number;
  readonly disk: string;
  readonly faults: ReadonlyMap<FaultKind, number>;
  readonly leftOut: Partial<Record<FaultKind, string>>;
  readonly stops: readonly MeasuredStop[];
  readonly terminal: {
    readonly stopsMs: readonly number[];
    readonly unanswered: number;
    readonly killed: number;
    readonly leftByEof: number;
    readonly resumed: number;
  };
  readonly led: { readonly begun: number; readonly answered: number; readonly doubleTouches: number };
  readonly kept: Kept;
  readonly records: readonly RecordFound[];
  readonly replaced: readonly RecordFound[];
  readonly cutShort: readonly RecordFound[];
  readonly didNotComeUp: number;
  readonly locals: {
    readonly held: number;
    readonly sent: number;
    readonly kept: number;
    readonly refusals: readonly string[];
    readonly missing: readonly string[];
  };
  readonly strangers: { readonly tried: number; readonly effects: readonly string[] };
  readonly startedAnew: number;
  /** How long the program itself, which runs all the faces, kept things waiting: p99 and longest. */
  readonly ownDelayMs: { readonly p99: number; readonly longest: number };
  /** What must not be, in a sentence each. */
  readonly blamed: readonly string[];
}

const quantile = (times: readonly number[], share: number): number => {
  const sorted = [...times].sort((a, b) => a - b);
  return sorted[Math.min(sorted.length - 1, Math.floor(sorted.length * share))] ?? Number.NaN;
};

const figures = (times: readonly number[]): string =>
  times.length === 0
    ? '- | - | -'
    : [0.5, 0.95, 1].map(share => quantile(times, share).toFixed(0)).join(' | ');

const present = (values: readonly (number | null)[]): number[] =>
  values.filter((value): value is number => value !== null);

const FACES_WITHIN_MS = 500;
const SHOUT_AFTER_MS = 1000;
/** A timer of a busy program is late. */
const SHOUT_SLACK_MS = 250;

const isSilent = ({ answeredMs, shouted }: MeasuredStop) =>
  !shouted && (answeredMs === null || answeredMs > SHOUT_AFTER_MS + SHOUT_SLACK_MS);

/** What must be zero, and how much of it there was. */
export function mustBeZero(outcome: Outcome): readonly (readonly [what: string, count: number])[] {
  const { stops, terminal, kept, records, locals, strangers, blamed } = outcome;
  return [
    [
      'stops that were never answered',
      stops.filter(({ answeredMs }) => answeredMs === null).length + terminal.unanswered,
    ],
    ['stops unanswered for more than a second of which the page said nothing', stops.filter(isSilent).length],
    ['faces that did not show a stop within 15 s', stops.reduce((sum, { facesLate }) => sum + facesLate, 0)],
    ['acknowledged entries lost', kept.lost.length],
    ['entries doubled', kept.doubled.length],
    ['records not confirmed', records.filter(({ doubts }) => doubts.length > 0).length],
    ['records left with a last line cut short, not gone on with', outcome.cutShort.length],
    ['records sent in, acknowledged and missing', locals.missing.length],
    ["strangers' commands with an effect", strangers.effects.length],
    ['other things that must not be', blamed.length],
  ];
}

function loadInAWord(): string {
  const [, load = 0] = loadavg();
  return `${load.toFixed(1)} of the last five minutes, on ${availableParallelism()} processors`;
}

export function table(outcome: Outcome): string {
  const { faults, leftOut, stops, terminal, led, kept, records, replaced, locals, strangers } = outcome;
  const by = (between: Between) => stops.filter(stop => stop.between === between);
  const calm = by('nothing');
  const faces = present(calm.map(({ facesMs }) => facesMs));
  const worked = present(
    calm.map(({ facesMs, inLineMs }) =>
      facesMs === null || inLineMs === null ? null : Math.max(0, facesMs - inLineMs),
    ),
  );
  const longest = calm.toSorted(
    (a, b) => (b.facesMs ?? b.answeredMs ?? 0) - (a.facesMs ?? a.answeredMs ?? 0),
  )[0];
  const stopRow = (name: string, list: readonly MeasuredStop[]) =>
    `| ${name} | ${list.length} | ${figures(present(list.map(({ answeredMs }) => answeredMs)))} | ${list.filter(({ shouted }) => shouted).length} |`;
  const remarks = new Map<string, number>();
  for (const record of records)
    for (const kind of new Set(record.remarks)) remarks.set(kind, (remarks.get(kind) ?? 0) + 1);
  const doubted = records.filter(({ doubts }) => doubts.length > 0);
  const list = (title: string, lines: readonly string[]) =>
    lines.length === 0
      ? []
      : ['', `${title}:`, '', ...lines.slice(0, 20).map(line => `- ${line.replaceAll('\n', ' ')}`)];
  return [
    `It ran for ${outcome.ranMinutes.toFixed(1)} minutes with ${outcome.bays} bays, seed ${outcome.seed}, on ${outcome.disk}. Load of the machine: ${loadInAWord()}; ` +
      `the program that plays all the people was itself late by up to ${outcome.ownDelayMs.longest.toFixed(0)} ms (p99 ${outcome.ownDelayMs.p99.toFixed(0)} ms), which is in the figures.`,
    '',
    '| fault | times |',
    '|---|---:|',
    ...(Object.keys(faultKinds) as FaultKind[]).map(
      kind =>
        `| ${faultKinds[kind]} | ${leftOut[kind] === undefined ? (faults.get(kind) ?? 0) : `left out: ${leftOut[kind]}`} |`,
    ),
    `| double touches, 60 ms apart | ${led.doubleTouches} |`,
    `| terminal left by the end of what is typed | ${terminal.leftByEof} |`,
    '',
    `The server was started ${outcome.startedAnew} times (and ${outcome.didNotComeUp} times in vain, on a full disk). ${led.begun} sessions were begun in bays, ${led.answered} questions answered; the terminal's sessions were resumed ${terminal.resumed} times.`,
    '',
    '| stops | sent | median ms | p95 ms | longest ms | the page shouted |',
    '|---|---:|---:|---:|---:|---:|',
    stopRow('answered, server alive and line whole', calm),
    `| shown on all faces of the bay, as above | ${faces.length} | ${figures(faces)} | |`,
    `| the same, less the time in line for a processor | ${worked.length} | ${figures(worked)} | |`,
    stopRow('answered, line cut, deaf or swallowing', by('lineBroken')),
    stopRow('answered, server killed or halted meanwhile', by('serverGone')),
    `| shown in a terminal | ${terminal.stopsMs.length} | ${figures(terminal.stopsMs)} | |`,
    '',
    `On all faces later than ${FACES_WITHIN_MS} ms: ${faces.filter(ms => ms > FACES_WITHIN_MS).length} of ${faces.length}.` +
      (longest === undefined ? '' : ` The longest was sent under: ${longest.beneath}.`),
    '',
    'In line for a processor: how long the server and the program that measures could have gone on, and others of the machine had all processors (Linux tells so). What is left is what the server, the line and the faces took.',
    '',
    '| on the record | count |',
    '|---|---:|',
    `| entries acknowledged | ${kept.promised} |`,
    `| of them found | ${kept.found} |`,
    `| stops acknowledged, server killed before the disk had them | ${kept.stopsBeforeDisk} |`,
    `| in memory only, as the faces were told, when the server was killed | ${kept.inMemory} |`,
    `| stops sent again after the session had been gone on with, which stopped it anew | ${records.reduce((sum, { stoppedAnew }) => sum + stoppedAnew, 0)} |`,
    `| records | ${records.length} |`,
    `| confirmed by verify and replay | ${records.length - doubted.length} |`,
    `| of these with a remark that is true | ${[...remarks].map(([kind, times]) => `${kind} ${times}`).join(', ') || 0} |`,
    `| besides: torn by the full disk, and whole in another file | ${replaced.length} |`,
    `| records held by tablets alone: sent in so often / acknowledged in the end, of | ${locals.sent} / ${locals.kept}, of ${locals.held} |`,
    `| strangers' commands | ${strangers.tried} |`,
    '',
    '| must be zero | count |',
    '|---|---:|',
    ...mustBeZero(outcome).map(([what, count]) => `| ${what} | ${count} |`),
    ...list('Lost', kept.lost),
    ...list('Doubled', kept.doubled),
    ...list(
      'Not confirmed',
      doubted.map(({ path, doubts }) => `${path.split('/').at(-1)}: ${doubts.join('; ')}`),
    ),
    ...list('Of these, sent in vain, and sent again later', locals.refusals),
    ...list('Missing', locals.missing),
    ...list('With an effect', strangers.effects),
    ...list('Must not be', outcome.blamed),
    '',
  ].join('\n');
}
