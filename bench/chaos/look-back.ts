import { readFile } from 'node:fs/promises';
import { join } from 'node:path';
import type { World } from './faults.ts';
import { facesOf } from './people.ts';
import { isReplaced, look, type RecordFound, recordsIn } from './records.ts';
import type { Ended } from './strangers.ts';
import { sha256Of } from './uploads.ts';

/** What is found on the disk when all is over. */
export interface LookedBack {
  readonly found: readonly RecordFound[];
  /** Those that have to be confirmed. */
  readonly records: readonly RecordFound[];
  readonly replaced: readonly RecordFound[];
  readonly cutShort: readonly RecordFound[];
  /** Sent in, acknowledged, and not as they were sent. */
  readonly missing: readonly string[];
}

/** Looks at every record, for what strangers did as well. */
export async function lookBack(
  { server, crews, strangers, locals }: World,
  terminals: string,
  ended: readonly Ended[],
  blame: (sentence: string) => void,
): Promise<LookedBack> {
  const paths = (await Promise.all([server.shop, server.cwd, terminals].map(recordsIn))).flat();
  const found: RecordFound[] = [];
  for (const path of paths) found.push(await look(path));
  const replaced = found.filter(record => record.doubts.length > 0 && isReplaced(record, found));
  // The disk was full when it was to be gone on with: the server said so, and a new session was begun.
  const cutShort = found.filter(
    record => record.isTorn && !replaced.includes(record) && server.allTold.includes(record.path),
  );
  const records = found.filter(record => !replaced.includes(record) && !cutShort.includes(record));
  for (const { device } of ended)
    if (found.some(({ devices }) => devices.has(device)))
      strangers.effects.push(`a command of the ended pairing ${device} is on a record`);
  for (const { path, sha256 } of found)
    if (strangers.forged.has(sha256)) strangers.effects.push(`a forged record was kept: ${path}`);
  for (const crew of crews) {
    const own = new Set(facesOf(crew).map(({ connection }) => connection.device));
    for (const { path, devices } of found.filter(record => record.path.includes(`-${crew.bay}`)))
      for (const device of devices)
        if (!own.has(device))
          strangers.effects.push(`a command of ${device} is on a record of ${crew.bay}: ${path}`);
  }
  const missing: string[] = [];
  for (const { keptAs, sha256 } of locals) {
    if (keptAs === null) continue;
    const bytes = await readFile(join(server.shop, `${keptAs}.jsonl`)).catch(() => Buffer.alloc(0));
    if (sha256Of(bytes) !== sha256) missing.push(keptAs);
    if (found.filter(record => record.sha256 === sha256).length > 1)
      blame(`${keptAs} was kept more than once.`);
  }
  return { found, records, replaced, cutShort, missing };
}
