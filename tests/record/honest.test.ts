import { mkdtempSync, rmSync } from 'node:fs';
import { readFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { uniform } from '../../audio-fixtures/random.ts';
import { readLog } from '../../src/record/index.ts';
import { alterations, altered } from './honest/alterations.ts';
import { doubts, findersOf, type Witnessed, witness } from './honest/check.ts';
import { honestSession } from './honest/session.ts';

/** Sessions and alterations here; `npm run honest-records` makes a hundred and ten thousand. */
const SEEDS = [104, 109, 125, 131, 146, 201];
const OF_EACH_WAY = 12;

interface Held {
  readonly lines: readonly string[];
  readonly witnessed: Witnessed;
}

const folder = mkdtempSync(join(tmpdir(), 'honest-'));
const held: Held[] = [];
const kinds = new Set<string>();
const happened = new Set<string>();
const doubted: Record<number, readonly string[]> = {};

beforeAll(async () => {
  for (const seed of SEEDS) {
    const session = await honestSession(join(folder, `${seed}.jsonl`), seed);
    for (const mishap of session.happened.keys()) happened.add(mishap);
    doubted[seed] = await doubts(session.path);
    const { entries } = await readLog(session.path);
    for (const { kind } of entries) kinds.add(kind);
    const lines = (await readFile(session.path, 'utf8')).split('\n').slice(0, -1);
    held.push({ lines, witnessed: await witness(session.path) });
  }
});
afterAll(() => rmSync(folder, { recursive: true, force: true }));

describe('a session that was held honestly, whatever went wrong in it', () => {
  it.each(SEEDS)('number %i is confirmed by verify and report, without a remark', seed => {
    expect(doubted[seed]).toEqual([]);
  });

  it('was stopped, corrected, skipped, restarted and led by two people in these', () => {
    for (const mishap of [
      'stop',
      'stopBySecond',
      'correction',
      'denial',
      'restart',
      'secondSpeaks',
      'busFault',
    ])
      expect(happened).toContain(mishap);
    for (const kind of ['contradiction', 'resumed', 'recovered', 'closed', 'reading', 'command', 'hearing'])
      expect(kinds).toContain(kind);
  });
});

describe('the same record with one thing altered', () => {
  it.each(alterations)('%s is found', async alteration => {
    const random = uniform(alterations.indexOf(alteration));
    for (let round = 0; round < OF_EACH_WAY; round += 1) {
      const own = held[round % held.length];
      const other = held[(round + 1) % held.length];
      if (!own || !other) throw new Error('no session');
      const bytes = altered(alteration, own.lines, other.lines, random);
      const found = await findersOf(bytes, own.witnessed, join(folder, 'altered.jsonl'), false);
      // Who chains it anew is found by what they cannot make: a signature, or a hash that somebody else has.
      if (found !== 'byChain') expect(found).toMatchObject({ bySignature: true, byHash: true });
    }
  });
});
