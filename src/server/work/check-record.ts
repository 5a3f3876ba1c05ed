import { createHash } from 'node:crypto';
import { createReadStream } from 'node:fs';
import { open } from 'node:fs/promises';
import { RecordError } from '../../record/index.ts';
import { gather } from '../../report/gather.ts';
import { isConfirmed } from '../../report/model.ts';
import { summarize } from '../../report/summarize.ts';

/** `confirmed`: it verifies, and its events carried out once more lead to what it says. */
export type Verdict = 'confirmed' | 'notConfirmed' | 'damaged';

export type Check =
  | { readonly isRecord: false }
  | {
      readonly isRecord: true;
      readonly verdict: Verdict;
      /** Its session was signed off or ended: nobody goes on with it. */
      readonly isOver: boolean;
      /** SHA-256 of the file. */
      readonly digest: string;
      /** Hash of the first entry, which all versions of one record share; empty when that one is not sound. */
      readonly chain: string;
    };

/** Longest first line that is looked for: a profile of several hundred kilobytes. */
const FIRST_LINE_BYTES = 1 << 20;

/** Whether a record can be believed. A torn last line is what a power loss leaves, and no damage. */
export async function checkRecord({ path }: { readonly path: string }): Promise<Check> {
  try {
    const input = await gather(path);
    const { trust, outcome } = summarize(input);
    const isWhole = input.fault === undefined || input.fault.problem === 'tornTail';
    const verdict =
      !isWhole || input.entries.length === 0 ? 'damaged' : isConfirmed(trust) ? 'confirmed' : 'notConfirmed';
    const isOver = outcome.kind === 'signedOff' || outcome.kind === 'ended';
    const chain = input.entries[0]?.hash ?? '';
    return { isRecord: true, verdict, isOver, digest: await digestOf(path), chain };
  } catch (error) {
    if (error instanceof RecordError) return { isRecord: false };
    throw error;
  }
}

async function digestOf(path: string): Promise<string> {
  const hash = createHash('sha256');
  for await (const part of createReadStream(path)) hash.update(part);
  return hash.digest('hex');
}

/** What the first line of a file says that its hash is; empty where it says nothing of the kind. */
export async function firstHash(path: string): Promise<string> {
  const file = await open(path, 'r');
  try {
    const { bytesRead, buffer } = await file.read(Buffer.alloc(FIRST_LINE_BYTES), 0, FIRST_LINE_BYTES, 0);
    const [line = ''] = buffer.toString('utf8', 0, bytesRead).split('\n', 1);
    return /"hash":"([0-9a-f]{64})"/.exec(line)?.[1] ?? '';
  } finally {
    await file.close();
  }
}
