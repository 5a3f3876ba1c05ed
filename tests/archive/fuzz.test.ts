import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import fc from 'fast-check';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { addFiles } from '../../src/archive/add-files.ts';
import type { Archive } from '../../src/archive/archive.ts';
import { takeIn } from '../../src/archive/intake.ts';
import { takeInAll } from '../../src/archive/intake-pool.ts';
import { openArchive } from '../../src/archive/open.ts';
import { verifyLog } from '../../src/record/index.ts';
import { another, wholeSession } from './sessions.ts';

const folder = mkdtempSync(join(tmpdir(), 'archive-fuzz-'));
const path = join(folder, 'odd.jsonl');
let text = '';
let archive: Archive;

beforeAll(async () => {
  const entries = await wholeSession(join(folder, 'model.jsonl'));
  text = another(entries.slice(0, 120), {});
  archive = await openArchive(join(folder, 'archive.sqlite'));
});
afterAll(async () => {
  await archive.close();
  rmSync(folder, { recursive: true, force: true });
});

/** Adds odd bytes and holds what the archive says of them against what verifying says, and what it keeps against the bytes. */
async function holdsNoLie(bytes: Buffer): Promise<void> {
  writeFileSync(path, bytes);
  const verification = await verifyLog(path);
  for await (const added of addFiles(archive, [path])) {
    if (added.kind === 'refused') {
      expect(verification.ok).toBe(false);
      expect(added.sentence).toContain(path);
      continue;
    }
    const session = await archive.session(added.decision.id);
    if (added.kind !== 'known') {
      expect(session.state === 'sound').toBe(verification.ok);
      expect((await archive.log(session.id)).equals(bytes)).toBe(true);
    }
  }
}

describe('whatever is added, nothing crashes and nothing is called sound that is not', () => {
  it('random bytes', () =>
    fc.assert(
      fc.asyncProperty(fc.uint8Array({ maxLength: 400 }), bytes => holdsNoLie(Buffer.from(bytes))),
      { numRuns: 40 },
    ));

  it('random JSON lines', () =>
    fc.assert(
      fc.asyncProperty(fc.array(fc.json(), { maxLength: 6 }), lines =>
        holdsNoLie(Buffer.from(lines.join('\n'))),
      ),
      { numRuns: 40 },
    ));

  it('a record with bytes changed, or cut off anywhere', () =>
    fc.assert(
      fc.asyncProperty(fc.nat(), fc.nat(), fc.integer({ min: 0, max: 255 }), async (cut, where, flip) => {
        const bytes = Buffer.from(text).subarray(0, 1 + (cut % text.length));
        const at = where % bytes.length;
        bytes.writeUInt8(bytes.readUInt8(at) ^ flip, at);
        await holdsNoLie(bytes);
      }),
      { numRuns: 60 },
    ));

  it('lines swapped, repeated or left out', () => {
    const lines = text.split('\n').slice(0, 12);
    return fc.assert(
      fc.asyncProperty(fc.array(fc.nat({ max: 11 }), { maxLength: 14 }), picks =>
        holdsNoLie(Buffer.from(picks.map(pick => `${lines[pick]}\n`).join(''))),
      ),
      { numRuns: 60 },
    );
  });

  it('a line of three million characters', async () => {
    await holdsNoLie(Buffer.from(`${text}${'x'.repeat(3e6)}\n`));
    await holdsNoLie(Buffer.from('{"format":"first-fire-record"'.padEnd(3e6, ' ')));
  });
});

describe('many records, read by several threads', () => {
  it('come in the order in which they were asked for, as if read one by one', async () => {
    const paths = Array.from({ length: 60 }, (_, index) => join(folder, `many-${index}.jsonl`));
    paths.forEach((own, index) => {
      writeFileSync(
        own,
        index % 7 === 3
          ? 'no record'
          : text
              .split('\n')
              .slice(0, index + 1)
              .join('\n'),
      );
    });
    const taken = [];
    for await (const result of takeInAll(paths, 2)) taken.push(result);
    expect(taken.map(result => (result.ok ? result.intake.source : result.source))).toEqual(paths);
    for (const index of [0, 3, 30]) {
      const alone = await takeIn(paths[index] ?? '');
      expect(taken[index]).toMatchObject(
        alone.ok ? { ok: true, intake: { digest: alone.intake.digest } } : alone,
      );
    }
  });
});
