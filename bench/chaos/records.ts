import { readdir, readFile } from 'node:fs/promises';
import { basename, join } from 'node:path';
import { readLog, verifyLog } from '../../src/record/index.ts';
import { buildDocument } from '../../src/report/document/build.ts';
import { gather } from '../../src/report/gather.ts';
import { summarize } from '../../src/report/summarize.ts';
import { type CommandsFound, commandsIn } from './commands-in.ts';
import type { Ledger, Promised } from './ledger.ts';
import { sha256Of } from './uploads.ts';

export interface RecordFound extends CommandsFound {
  readonly path: string;
  readonly entries: number;
  readonly sha256: string;
  /** Hash of the first entry: of all versions of one record the same. */
  readonly chain: string;
  readonly doubts: readonly string[];
  /** Its last line breaks off. */
  readonly isTorn: boolean;
  /** True things that verify remarks upon: a clock set back, lines of another run. */
  readonly remarks: readonly string[];
}

export async function recordsIn(folder: string): Promise<string[]> {
  const names = await readdir(folder).catch(() => []);
  return names.filter(name => name.endsWith('.jsonl')).map(name => join(folder, name));
}

/** What `verify` and `report` say of a record, and which commands it holds. */
export async function look(path: string): Promise<RecordFound> {
  const { entries, tornBytes } = await readLog(path);
  const verification = await verifyLog(path);
  const doubts = verification.ok ? await doubtsOfReport(path) : [verification.sentence];
  return {
    path,
    entries: entries.length,
    sha256: sha256Of(await readFile(path)),
    chain: entries[0]?.hash ?? '',
    ...commandsIn(entries),
    doubts,
    isTorn: tornBytes !== undefined,
    remarks: verification.ok ? verification.remarks.map(({ kind }) => kind) : [],
  };
}

async function doubtsOfReport(path: string): Promise<string[]> {
  const model = summarize(await gather(path));
  const { trust } = model;
  const { warning } = buildDocument(model, 'metric');
  return [
    ...(trust.sound ? [] : ['the report says that it is not sound']),
    ...(trust.replayFault ? [JSON.stringify(trust.replayFault)] : []),
    ...trust.notUnderstood.map(seq => `entry ${seq} is not understood`),
    ...(warning === undefined ? [] : [warning]),
  ];
}

/** A record that the disk could not take to its end, of which the whole is in another file. */
export const isReplaced = (record: RecordFound, all: readonly RecordFound[]): boolean =>
  record.chain !== '' &&
  all.some(
    other =>
      other.path !== record.path &&
      other.chain === record.chain &&
      basename(other.path).includes('.rescued-') &&
      other.entries >= record.entries,
  );

export interface Kept {
  readonly promised: number;
  readonly found: number;
  /** A stop is answered before the disk has it: the server was killed in that moment. */
  readonly stopsBeforeDisk: number;
  /** Of a record that was in memory only, as the faces were told, when the server was killed. */
  readonly inMemory: number;
  readonly lost: readonly string[];
  readonly doubled: readonly string[];
}

const BEFORE_DISK_MS = 3000;

/** Holds what the faces were told against what is on the disk in the end. */
export function compare(ledger: Ledger, records: readonly RecordFound[]): Kept {
  const named = (one: Promised) =>
    `${one.what} of ${one.bay}, session ${one.session}, run ${one.run}, command ${one.device} ${one.id}`;
  let [found, stopsBeforeDisk, inMemory] = [0, 0, 0];
  const lost: string[] = [];
  for (const one of ledger.promised) {
    if (records.some(({ commands }) => commands.has(`${one.device} ${one.id}`))) found += 1;
    else if (ledger.wasInMemory(one)) inMemory += 1;
    else if (one.isStop && ledger.wasKilledWithin(one, BEFORE_DISK_MS)) stopsBeforeDisk += 1;
    else lost.push(named(one));
  }
  const chainsOf = new Map<string, Set<string>>();
  const doubled: string[] = [];
  for (const { path, chain, commands } of records)
    for (const [key, times] of commands) {
      const chains = chainsOf.get(key) ?? new Set();
      chainsOf.set(key, chains.add(chain));
      if (times > 1) doubled.push(`${key}, ${times} times in ${basename(path)}`);
    }
  for (const [key, chains] of chainsOf)
    if (chains.size > 1) doubled.push(`${key}, in ${chains.size} records`);
  return { promised: ledger.promised.length, found, stopsBeforeDisk, inMemory, lost, doubled };
}
