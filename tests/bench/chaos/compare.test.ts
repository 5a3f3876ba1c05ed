import { describe, expect, it } from 'vitest';
import { Ledger, type Promised } from '../../../bench/chaos/ledger.ts';
import { compare, isReplaced, type RecordFound } from '../../../bench/chaos/records.ts';

const promised = (id: string, more: Partial<Promised> = {}): Promised => ({
  bay: 'north',
  session: 's',
  device: 'd',
  id,
  what: 'say',
  run: 1,
  atMs: 1000,
  isStop: false,
  shownInMemory: false,
  ...more,
});

const record = (ids: readonly string[], more: Partial<RecordFound> = {}): RecordFound => ({
  path: '/shop/a.jsonl',
  entries: ids.length,
  sha256: '',
  chain: 'first',
  commands: new Map(ids.map(id => [`d ${id}`, ids.filter(each => each === id).length])),
  devices: new Set(['d']),
  stoppedAnew: 0,
  doubts: [],
  isTorn: false,
  remarks: [],
  ...more,
});

const ledgerOf = (...all: readonly Promised[]) => {
  const ledger = new Ledger({ runs: 1 });
  ledger.promised.push(...all);
  return ledger;
};

describe('What was acknowledged', () => {
  it('is found where it is on a record, and lost where it is on none', () => {
    const kept = compare(ledgerOf(promised('one'), promised('two')), [record(['one'])]);
    expect(kept).toMatchObject({ promised: 2, found: 1, doubled: [] });
    expect(kept.lost).toHaveLength(1);
    expect(kept.lost[0]).toContain('two');
  });

  it('may be missing of a stop only, and only where the server was killed in the moment after', () => {
    const stop = promised('one', { isStop: true });
    expect(compare(ledgerOf(stop), []).lost).toHaveLength(1);
    for (const [atMs, lost] of [
      [1500, 0],
      [9000, 1],
      [500, 1],
    ] as const) {
      const ledger = ledgerOf(stop);
      ledger.kills.push({ run: 1, atMs });
      expect(compare(ledger, []).lost).toHaveLength(lost);
    }
    const answer = ledgerOf(promised('one'));
    answer.kills.push({ run: 1, atMs: 1500 });
    expect(compare(answer, []).lost).toHaveLength(1);
  });

  it('may be missing where its device showed that it is in memory only, and the server was killed after that', () => {
    const shown = () => promised('one', { shownInMemory: true });
    expect(compare(ledgerOf(shown()), [])).toMatchObject({ inMemory: 0, lost: [expect.any(String)] });
    for (const [kill, inMemory] of [
      [{ run: 1, atMs: 60_000 }, 1],
      [{ run: 1, atMs: 500 }, 0],
      [{ run: 2, atMs: 60_000 }, 0],
    ] as const) {
      const ledger = ledgerOf(shown());
      ledger.kills.push(kill);
      expect(compare(ledger, [])).toMatchObject({ inMemory });
    }
    const unshown = ledgerOf(promised('one'));
    unshown.kills.push({ run: 1, atMs: 60_000 });
    expect(compare(unshown, []).lost).toHaveLength(1);
  });

  it('is doubled by one record that has it twice, and by two records, not by two versions of one', () => {
    const ledger = ledgerOf(promised('one'));
    expect(compare(ledger, [record(['one', 'one'])]).doubled).toHaveLength(1);
    const other = record(['one'], { path: '/shop/b.jsonl', chain: 'other' });
    expect(compare(ledger, [record(['one']), other]).doubled).toHaveLength(1);
    const rescued = record(['one'], { path: '/shop/a.rescued-1.jsonl' });
    expect(compare(ledger, [record(['one']), rescued]).doubled).toEqual([]);
  });
});

describe('A record that the full disk tore', () => {
  const torn = record(['one'], { isTorn: true });

  it('is replaced by the whole of it in another file', () => {
    expect(isReplaced(torn, [torn, record(['one', 'two'], { path: '/shop/a.rescued-1.jsonl' })])).toBe(true);
  });

  it('is not replaced by itself, by a shorter one, or by another record', () => {
    const rescued = '/shop/a.rescued-1.jsonl';
    expect(isReplaced(torn, [torn])).toBe(false);
    expect(isReplaced(torn, [torn, record([], { path: rescued })])).toBe(false);
    expect(isReplaced(torn, [torn, record(['one'], { path: rescued, chain: 'other' })])).toBe(false);
  });
});
