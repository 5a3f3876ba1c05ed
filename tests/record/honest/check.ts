import { writeFile } from 'node:fs/promises';
import {
  checkSignature,
  makeKeys,
  readLog,
  readPrivateKey,
  type Signature,
  signHash,
  verifyLog,
} from '../../../src/record/index.ts';
import { buildDocument } from '../../../src/report/document/build.ts';
import { gather } from '../../../src/report/gather.ts';
import { summarize } from '../../../src/report/summarize.ts';

const key = readPrivateKey(makeKeys().privatePem, 'a key made for this run');

/** What `verify` and `report` have against a record; nothing for one that they confirm. */
export async function doubts(path: string): Promise<string[]> {
  const verification = await verifyLog(path);
  if (!verification.ok) return [verification.sentence];
  const model = summarize(await gather(path));
  const { trust } = model;
  const report = buildDocument(model, 'metric');
  return [
    ...verification.remarks.map(({ sentence }) => sentence),
    ...(trust.sound ? [] : ['the report says that it is not sound']),
    ...(trust.replayFault ? [JSON.stringify(trust.replayFault)] : []),
    ...trust.notUnderstood.map(seq => `entry ${seq} is not understood`),
    ...(report.warning === undefined ? [] : [report.warning]),
  ];
}

/** A record as it was when it was signed, and its hash handed to somebody else. */
export interface Witnessed {
  readonly hash: string;
  readonly signature: Signature;
}

export async function witness(path: string): Promise<Witnessed> {
  const { entries } = await readLog(path);
  const hash = entries.at(-1)?.hash ?? '';
  return { hash, signature: signHash(hash, key, 'bay', new Date(0)) };
}

/** Who finds out that a record was altered: its own chain, or, where that holds, whoever else looks. */
export type Found =
  | 'byChain'
  | {
      readonly bySignature: boolean;
      /** By the hash that somebody else has: it is not in the record, or not at its end. */
      readonly byHash: boolean;
      /** By carrying its events out once more; null where that was not tried. */
      readonly byReplay: boolean | null;
    };

/**
 * Looks at altered bytes as `verify` and `report` do.
 * @param place where they are written to be looked at
 * @param replays whether the report is made, too: it takes a hundred times as long
 */
export async function findersOf(
  bytes: Buffer,
  { hash, signature }: Witnessed,
  place: string,
  replays: boolean,
): Promise<Found> {
  await writeFile(place, bytes);
  const alone = await verifyLog(place);
  if (!alone.ok) return 'byChain';
  const known = await verifyLog(place, { lastHash: hash });
  return {
    bySignature: !checkSignature(signature, alone.lastHash).valid,
    byHash: !known.ok || known.remarks.some(({ kind }) => kind === 'continued'),
    byReplay: replays ? !(await isConfirmed(place)) : null,
  };
}

async function isConfirmed(path: string): Promise<boolean> {
  const { trust } = summarize(await gather(path));
  return trust.sound && trust.replayFault === undefined && trust.notUnderstood.length === 0;
}
