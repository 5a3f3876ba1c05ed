import { mkdtemp, readFile, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { reopenLog } from '../../../src/record/index.ts';

/** A record that goes on from this one with a sign-off that nobody gave, chained as it should be. */
export async function signedOffInVain(record: Buffer): Promise<Buffer> {
  const path = join(await mkdtemp(join(tmpdir(), 'forged-')), 'forged.jsonl');
  await writeFile(path, record);
  const { log } = await reopenLog(path, () => ({ clock: { wall: () => new Date(), monoMs: () => 1e9 } }));
  await log.append('closed', { outcome: 'signedOff' });
  await log.close();
  return readFile(path);
}
