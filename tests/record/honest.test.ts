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

/** `npm run honest-records` holds a hundred sessions and makes ten thousand alterations. */
const LEAST_SESSIONS = 5;
const MOST_SESSIONS = 30;
const OF_EACH_WAY = 10;

/** Sessions are held until all of this was among them. */
const wantedMishaps = [
  'stop',
  'stopBySecond',
  'correction',
  'denial',
  'restart',
  'secondSpeaks',
  'busFault',
] as const;
const wantedKinds = ['contradiction', 'resumed', 'recovered', 'closed', 'reading', 'command', 'hearing'];

interface Held {
  readonly lines: readonly string[];
  readonly witnessed: Witnessed;
}

const folder = mkdtempSync(join(tmpdir(), 'honest-'));
const held: Held[] = [];
const kinds = new Set<string>();
const happened = new Set<string>();
const doubted: string[] = [];

const lacking = () => [
  ...wantedMishaps.filter(mishap => !happened.has(mishap)),
  ...wantedKinds.filter(kind => !kinds.has(kind)),
];

beforeAll(async () => {
  for (let seed = 1; seed <= MOST_SESSIONS && (seed <= LEAST_SESSIONS || lacking().length > 0); seed += 1) {
    const session = await honestSession(join(folder, `${seed}.jsonl`), seed);
    for (const mishap of session.happened.keys()) happened.add(mishap);
    doubted.push(...(await doubts(session.path)).map(doubt => `${seed}: ${doubt}`));
    const { entries } = await readLog(session.path);
    for (const { kind } of entries) kinds.add(kind);
    const lines = (await readFile(session.path, 'utf8')).split('\n').slice(0, -1);
    held.push({ lines, witnessed: await witness(session.path) });
  }
});
afterAll(() => rmSync(folder, { recursive: true, force: true }));

describe('sessions that were held honestly, whatever went wrong in them', () => {
  it('are confirmed by verify and report, without a remark', () => {
    expect(doubted).toEqual([]);
  });

  it('were stopped, corrected, restarted, torn and led by two people', () => {
    expect(lacking()).toEqual([]);
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
