import type { Entry, JsonObject } from '../record/index.ts';
import {
  isKind,
  jobCardSchema,
  type Kind,
  ofKind,
  type Recorded,
  readRecorded,
} from '../record/vocabulary/index.ts';
import { mannerOf } from '../report/manner.ts';
import { outcomeOf } from '../report/summarize.ts';
import { readHeader, type SessionHeader } from '../session/header.ts';
import { storable } from './fold.ts';
import { type Measured, measuredIn } from './measures.ts';

/** How a session ended: `broke-off` when its record stops in the middle, `stopped` when it does so after a stop. */
export const outcomes = ['signed-off', 'ended', 'stopped', 'broke-off', 'unknown'] as const;
export type ArchivedOutcome = (typeof outcomes)[number];

/** What the archive knows of a session without opening its record. */
export interface Card {
  readonly vehicle: string;
  readonly engine: string;
  readonly profile: string;
  readonly technician: string;
  readonly second: string;
  readonly supervisor: string;
  /** The step in which the record ends. */
  readonly step: string;
  readonly outcome: ArchivedOutcome;
  /** Session time of the last entry that was looked at. */
  readonly seconds: number;
  /** Stops, faults, skips and problems in words, to be searched. */
  readonly story: string;
  readonly measured: readonly Measured[];
}

/** A shop's archive is searched in one language, whatever its sessions were held in. */
const { name } = mannerOf('en', 'metric');

/** Which entries of a kind a card is made of; of the many events only the last tells what the others do not. */
const looksAt: Readonly<Record<Kind, 'each' | 'last' | 'none'>> = {
  opened: 'each',
  resumed: 'none',
  recovered: 'none',
  event: 'last',
  passed: 'each',
  verdict: 'each',
  inTime: 'each',
  stopped: 'each',
  reopened: 'none',
  skipped: 'each',
  faults: 'each',
  refused: 'none',
  disagreement: 'none',
  contradiction: 'none',
  doubted: 'none',
  vouched: 'none',
  barred: 'none',
  takenBack: 'none',
  found: 'none',
  leftOpen: 'none',
  settled: 'none',
  heard: 'none',
  said: 'none',
  problem: 'each',
  hearing: 'none',
  reading: 'none',
  engineHeard: 'none',
  besideOthers: 'none',
  otherVoice: 'none',
  voiceLearned: 'none',
  command: 'none',
  notCarriedOut: 'none',
  closed: 'each',
};

/** Picks the entries that a card is made of while a record is read. */
export class CardReader {
  readonly #entries: Entry[] = [];
  #lastEvent: (() => Entry) | undefined;

  visit(kind: string, read: () => Entry): void {
    if (!isKind(kind)) return;
    if (looksAt[kind] === 'last') this.#lastEvent = read;
    if (looksAt[kind] === 'each') this.#entries.push(read());
  }

  card(): Card {
    const [opened] = this.#entries;
    const header = opened ? headerOf(opened.data) : null;
    const lastEvent = this.#lastEvent?.();
    const inOrder = lastEvent ? [...this.#entries, lastEvent].sort((a, b) => a.seq - b.seq) : this.#entries;
    const { entries } = readRecorded(inOrder);
    const job = header?.job;
    const last = entries.findLast(ofKind('event'));
    return {
      vehicle: storable(job?.vehicle ?? ''),
      engine: storable(job?.engine ?? ''),
      profile: storable(header?.profile.name ?? ''),
      technician: storable(job?.technician ?? ''),
      second: storable(job?.second ?? ''),
      supervisor: storable(job?.supervisor ?? ''),
      step: storable((last?.data.state ?? '').split('.').slice(0, 2).join('.')),
      outcome: header ? outcomeWord(entries) : 'unknown',
      seconds: (entries.at(-1)?.timeMs ?? 0) / 1000,
      story: storable(entries.map(toldIn).join(' ')),
      measured: measuredIn(entries, header?.profile ?? null),
    };
  }
}

/** The header read last, but for its job card. */
let lastRead: { readonly rest: string; readonly header: SessionHeader | null } | undefined;

const anyJob = { vehicle: '-', engine: '-', technician: '-', second: '-', supervisor: '-' };

/** As `readHeader`. A shop has few profiles, and to check one takes as long as all the rest of a short record. */
function headerOf({ job, ...others }: JsonObject): SessionHeader | null {
  const rest = JSON.stringify(others);
  if (lastRead?.rest !== rest) lastRead = { rest, header: readHeader({ ...others, job: anyJob }) };
  const card = jobCardSchema.safeParse(job);
  return lastRead.header && card.success ? { ...lastRead.header, job: card.data } : null;
}

function outcomeWord(entries: readonly Recorded[]): ArchivedOutcome {
  const outcome = outcomeOf(entries);
  switch (outcome.kind) {
    case 'signedOff':
      return 'signed-off';
    case 'ended':
      return 'ended';
    case 'open':
      return outcome.stopped ? 'stopped' : 'broke-off';
    case 'nothing':
      return 'broke-off';
  }
}

function toldIn(entry: Recorded): string {
  switch (entry.kind) {
    case 'stopped':
      return `${name.step(entry.data.step)} ${name.cause(entry.data.cause ?? '')}`;
    case 'faults':
      return entry.data.faults.map(({ spn, fmi, meaning }) => `${spn}/${fmi} ${meaning ?? ''}`).join(' ');
    case 'skipped':
      return `${name.step(entry.data.step)} ${name.reply(entry.data.reason)}`;
    case 'problem':
      return entry.data.sentence;
    default:
      return '';
  }
}
