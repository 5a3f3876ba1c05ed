import { existsSync, readFileSync, rmSync, truncateSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { type JsonObject, openNewLog, readLog, reopenLog, verifyLog } from '../../src/record/index.ts';
import { HandClock, readLines, tempFolder, writeLines, writeRecord } from './support.ts';

const newPath = (): string => join(tempFolder(), 'session.jsonl');

describe('a new record', () => {
  it('begins with the entry opened, which holds the header', async () => {
    const path = newPath();
    const log = await openNewLog(path, { engine: 'demo' }, new HandClock());
    await log.close();
    expect((await readLog(path)).entries).toMatchObject([
      {
        v: 1,
        seq: 0,
        at: '2026-11-25T09:00:00.000Z',
        monoMs: 0,
        kind: 'opened',
        data: { format: 'first-fire-record', engine: 'demo' },
        prev: '0'.repeat(64),
      },
    ]);
  });

  it('has each entry in the file before append settles', async () => {
    const path = newPath();
    const clock = new HandClock();
    const log = await openNewLog(path, {}, clock);
    for (let i = 1; i <= 5; i++) {
      clock.pass(0.12345);
      const entry = await log.append('reading', { i });
      expect(JSON.parse(readLines(path)[i] ?? '')).toEqual(entry);
      expect(log).toMatchObject({ entries: i + 1, lastHash: entry.hash, unsavedEntries: 0 });
    }
    await log.close();
  });

  it('keeps the order of the calls when many come at once', async () => {
    const path = newPath();
    const log = await openNewLog(path, {}, new HandClock());
    const entries = await Promise.all(Array.from({ length: 500 }, (_, i) => log.append('burst', { i })));
    await log.close();
    expect(entries.map(entry => entry.data)).toEqual(Array.from({ length: 500 }, (_, i) => ({ i })));
    expect((await readLog(path)).entries.slice(1)).toEqual(entries);
    expect(await verifyLog(path)).toMatchObject({ ok: true, entries: 501 });
  });

  it('is not touched by what the caller does to the data afterwards', async () => {
    const path = newPath();
    const log = await openNewLog(path, {}, new HandClock());
    const data = { inner: { value: 1 } };
    const entry = await log.append('reading', data);
    data.inner.value = 2;
    await log.close();
    expect(entry.data).toEqual({ inner: { value: 1 } });
  });

  it('leaves no lock behind when closed, and takes nothing more', async () => {
    const path = newPath();
    const log = await openNewLog(path, {}, new HandClock());
    const last = log.append('last', {});
    await log.close();
    expect((await last).seq).toBe(1);
    expect(existsSync(`${path}.lock`)).toBe(false);
    for (const call of [() => log.append('more', {}), () => log.close(), () => log.saveTo(`${path}2`)]) {
      await expect(call()).rejects.toMatchObject({ code: 'closed' });
    }
  });

  it('never replaces a file', async () => {
    const path = newPath();
    writeFileSync(path, 'something');
    await expect(openNewLog(path, {}, new HandClock())).rejects.toMatchObject({
      code: 'exists',
      message: expect.stringContaining('is there already'),
    });
    expect(readFileSync(path, 'utf8')).toBe('something');
    expect(existsSync(`${path}.lock`)).toBe(false);
  });
});

describe('what cannot be recorded is refused by name and leaves the record as it was', () => {
  class Thing {
    value = 1;
  }
  const cyclic: Record<string, unknown> = {};
  cyclic.self = cyclic;
  const refused: [string, unknown, string][] = [
    ['NaN', { readings: [1, { kpa: Number.NaN }] }, 'data.readings[1].kpa is NaN, not a finite number'],
    ['infinity', { margin: Number.POSITIVE_INFINITY }, 'data.margin is Infinity, not a finite number'],
    ['a missing value', { value: undefined }, 'data.value is of type undefined'],
    ['a hole in a list', { list: new Array(1) }, 'data.list[0] is of type undefined'],
    ['a date', { when: new Date(0) }, 'data.when is not a plain object'],
    ['an object of a class', { thing: new Thing() }, 'data.thing is not a plain object'],
    ['a big integer', { count: 1n }, 'data.count is of type bigint'],
    ['half a character', { heard: '\ud83d' }, 'data.heard holds half a character'],
    ['half a character in a name', { '\udc00': 1 }, 'a name in data holds half a character'],
    ['a circle', cyclic, 'nested deeper than 64 levels'],
    ['a list in place of data', [], 'data must be an object'],
    ['more than half a megabyte', { text: 'x'.repeat(600_000) }, 'more than the 524288 allowed'],
  ];

  it.each(refused)('%s', async (_name, data, words) => {
    const path = newPath();
    const log = await openNewLog(path, {}, new HandClock());
    const before = readFileSync(path, 'utf8');
    await expect(Reflect.apply(log.append, log, ['reading', data])).rejects.toMatchObject({
      code: 'invalid',
      message: expect.stringContaining(words),
    });
    expect(readFileSync(path, 'utf8')).toBe(before);
    expect((await log.append('next', {})).seq).toBe(1);
    await log.close();
  });

  it.each(['', '1st', 'two words', 'ü', 'x'.repeat(121), 'opened', 'resumed', 'recovered'])(
    'the kind "%s"',
    async kind => {
      const log = await openNewLog(newPath(), {}, new HandClock());
      await expect(log.append(kind, {})).rejects.toMatchObject({ code: 'invalid' });
      await log.close();
    },
  );

  it('a steady clock that ran backwards, or a clock without a time', async () => {
    const clock = new HandClock();
    clock.pass(1000);
    const log = await openNewLog(newPath(), {}, clock);
    clock.steadyMs = 999;
    await expect(log.append('reading', {})).rejects.toThrow('the steady clock ran backwards');
    clock.steadyMs = Number.NaN;
    await expect(log.append('reading', {})).rejects.toThrow('monoMs is NaN');
    clock.steadyMs = 1000;
    clock.wallMs = Number.NaN;
    await expect(log.append('reading', {})).rejects.toThrow('the wall clock gives no time');
    clock.wallMs = 0;
    expect((await log.append('reading', {})).seq).toBe(1);
    await log.close();
  });

  it('a bad header, before any file is made', async () => {
    const path = newPath();
    await expect(openNewLog(path, { value: Number.NaN }, new HandClock())).rejects.toThrow(
      'data.value is NaN',
    );
    expect(existsSync(path)).toBe(false);
  });
});

describe('reopening a record', () => {
  it('gives its entries and goes on behind them, with a steady clock of its own', async () => {
    const path = newPath();
    await writeRecord(path, 4);
    const { log, entries, resumed } = await reopenLog(path, () => ({ clock: new HandClock() }));
    expect(entries.map(entry => entry.kind)).toEqual(['opened', 'reading', 'reading', 'reading']);
    expect(resumed).toMatchObject({ seq: 4, kind: 'resumed', monoMs: 0, data: {} });
    expect(await log.append('reading', {})).toMatchObject({ seq: 5 });
    await log.close();
    expect(await verifyLog(path)).toMatchObject({ ok: true, entries: 6 });
  });

  it('recovers a last line torn at any byte and keeps the torn bytes', async () => {
    const path = newPath();
    const lines = await writeRecord(path, 3, () => ({ said: 'grüße 🔧' }));
    const bytes = readFileSync(path);
    const whole = Buffer.byteLength(`${lines.slice(0, 2).join('\n')}\n`);
    for (let size = whole + 1; size < bytes.length; size++) {
      writeFileSync(path, bytes);
      truncateSync(path, size);
      const read = await readLog(path);
      expect(read).toMatchObject({ fault: { problem: 'tornTail', line: 3 } });
      expect(read.entries).toHaveLength(2);
      const { log, resumed } = await reopenLog(path, () => ({ clock: new HandClock() }));
      await log.close();
      expect(resumed).toMatchObject({ seq: 2, kind: 'recovered' });
      expect(resumed.data).toEqual({ tornBase64: bytes.subarray(whole, size).toString('base64') });
      expect(await verifyLog(path)).toMatchObject({ ok: true, entries: 3 });
    }
  });

  it('recovers a long tail of zero bytes, as some disks leave after a power loss', async () => {
    const path = newPath();
    const lines = await writeRecord(path, 2);
    const tail = Buffer.alloc(400_000);
    writeFileSync(path, Buffer.concat([Buffer.from(`${lines.join('\n')}\n`), tail]));
    const { log, resumed } = await reopenLog(path, () => ({ clock: new HandClock() }));
    await log.append('reading', {});
    await log.close();
    expect(resumed.data).toEqual({ tornBase64: tail.toString('base64') });
    expect(await verifyLog(path)).toMatchObject({ ok: true, entries: 4 });
  });

  it('refuses an altered record, and leaves it and its folder as they were', async () => {
    const path = newPath();
    const lines = await writeRecord(path, 4);
    writeLines(path, lines.with(1, lines[1]?.replace('1.5', '9.5') ?? ''));
    const before = readFileSync(path);
    await expect(reopenLog(path, () => ({ clock: new HandClock() }))).rejects.toMatchObject({
      code: 'broken',
      message: expect.stringContaining('Line 2 was altered'),
    });
    expect(readFileSync(path)).toEqual(before);
    expect(existsSync(`${path}.lock`)).toBe(false);
  });

  it.each([
    ['an empty file', '', 'empty'],
    ['a letter', 'Dear reader,\n', 'notOurs'],
    [
      'a first line that breaks off',
      '{"at":"2026-11-25T09:00:00.000Z","data":{"format":"first-fire-record"',
      'broken',
    ],
  ])('refuses %s', async (_name, content, code) => {
    const path = newPath();
    writeFileSync(path, content);
    await expect(reopenLog(path, () => ({ clock: new HandClock() }))).rejects.toMatchObject({ code });
    expect(readFileSync(path, 'utf8')).toBe(content);
  });

  it('refuses a path that leads nowhere', async () => {
    await expect(reopenLog(newPath(), () => ({ clock: new HandClock() }))).rejects.toMatchObject({
      code: 'unreadable',
    });
  });
});

describe('when the file is taken away in mid-session', () => {
  const takenAway: [string, (path: string) => void, string][] = [
    ['deleted', path => rmSync(path), 'the file was deleted'],
    [
      'written by somebody else',
      path => writeFileSync(path, 'x', { flag: 'a' }),
      'another program changed the file',
    ],
    ['cut short by somebody else', path => truncateSync(path, 10), 'another program changed the file'],
  ];

  it.each(takenAway)(
    '%s: says so once, keeps all entries and saves them elsewhere',
    async (_name, spoil, cause) => {
      const path = newPath();
      const clock = new HandClock();
      const log = await openNewLog(path, {}, clock);
      const payload: JsonObject = { value: 1 };
      await log.append('before', payload);
      spoil(path);
      const results = await Promise.allSettled([log.append('first', payload), log.append('second', payload)]);
      expect(results.filter(result => result.status === 'rejected')).toMatchObject([
        { reason: { code: 'disk', message: expect.stringContaining(cause) } },
      ]);
      expect(await log.append('third', payload)).toMatchObject({ seq: 4 });
      expect(log).toMatchObject({ unsavedEntries: 3, failure: { code: 'disk' } });
      await expect(log.close()).rejects.toMatchObject({ code: 'unsaved' });

      const rescue = newPath();
      await log.saveTo(rescue);
      expect(log).toMatchObject({ path: rescue, unsavedEntries: 0, failure: undefined });
      await log.append('fourth', payload);
      await log.close();
      expect((await readLog(rescue)).entries.map(entry => entry.kind)).toEqual([
        'opened',
        'before',
        'first',
        'second',
        'third',
        'fourth',
      ]);
      expect(await verifyLog(rescue)).toMatchObject({ ok: true, entries: 6 });
    },
  );

  it('a rescue that fails changes nothing, and the next one may succeed', async () => {
    const path = newPath();
    const log = await openNewLog(path, {}, new HandClock());
    rmSync(path);
    await expect(log.append('first', {})).rejects.toMatchObject({ code: 'disk' });
    const taken = newPath();
    writeFileSync(taken, 'something');
    await expect(log.saveTo(taken)).rejects.toMatchObject({ code: 'exists' });
    await expect(log.saveTo(join(taken, 'below', 'a.jsonl'))).rejects.toMatchObject({ code: 'unwritable' });
    expect(readFileSync(taken, 'utf8')).toBe('something');
    expect(log.unsavedEntries).toBe(1);
    const rescue = newPath();
    await Promise.all([log.saveTo(rescue), log.append('meanwhile', {})]);
    await log.close();
    expect(await verifyLog(rescue)).toMatchObject({ ok: true, entries: 3 });
  });

  it('copies a record of thousands of entries', async () => {
    const path = newPath();
    const log = await openNewLog(path, {}, new HandClock());
    await Promise.all(Array.from({ length: 2500 }, (_, i) => log.append('reading', { i })));
    const copy = newPath();
    await log.saveTo(copy);
    await log.close();
    expect(readFileSync(copy).equals(readFileSync(path))).toBe(true);
  });
});
