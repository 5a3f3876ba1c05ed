import { mkdirSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { MAX_LINE_BYTES, openingRuleHolds, wallMs } from '../../src/record/entry.ts';
import { readLog } from '../../src/record/index.ts';
import { linesIn, type RawLine } from '../../src/record/lines.ts';
import { skimBytes } from '../../src/record/log-reader.ts';
import { RecordError } from '../../src/record/record-error.ts';
import { readRecordBytes, recordInMemory } from '../../src/record/record-file.ts';
import { sealEntry } from '../../src/record/seal.ts';
import { tempFolder, writeLines, writeRecord } from './support.ts';

async function linesOf(bytes: Buffer): Promise<RawLine[]> {
  const lines: RawLine[] = [];
  for await (const batch of recordInMemory(bytes).lines()) lines.push(...batch);
  return lines;
}

describe('a record whose bytes are in memory', () => {
  it('has the lines between its newlines, however long they are', async () => {
    const length = fc.oneof(fc.nat({ max: 5 }), fc.nat({ max: 300_000 }), fc.constantFrom(262_143, 262_144));
    await fc.assert(
      fc.asyncProperty(fc.array(length, { maxLength: 6 }), length, async (lengths, tailLength) => {
        const whole = lengths.map((each, i) => String(i).repeat(each));
        const tail = 'x'.repeat(tailLength);
        const lines = await linesOf(Buffer.from([...whole, tail].join('\n')));
        expect(lines.map(({ bytes }) => bytes.toString())).toEqual([
          ...whole,
          ...(tail === '' ? [] : [tail]),
        ]);
        expect(lines.map(({ terminated }) => terminated)).toEqual(lines.map((_, i) => i < whole.length));
      }),
      { numRuns: 30 },
    );
  });

  it('is given up at a line without an end', async () => {
    const [line, ...others] = await linesOf(Buffer.alloc(4 * MAX_LINE_BYTES, 'x'));
    expect(others).toEqual([]);
    expect(line?.terminated).toBe(false);
    expect(line?.bytes.length).toBeGreaterThan(MAX_LINE_BYTES);
    expect(line?.bytes.length).toBeLessThan(1.5 * MAX_LINE_BYTES);
  });

  it('ends where its bytes end', async () => {
    const batches: RawLine[][] = [];
    for await (const batch of linesIn(Buffer.from('a\nb\n'))) batches.push(batch);
    expect(batches.map(batch => batch.length)).toEqual([2, 0]);
  });

  it('is skimmed as it is read: the same entries, the same last one, the same fault', async () => {
    const path = join(tempFolder(), 'session.jsonl');
    const lines = await writeRecord(path, 5);
    const skim = async () => {
      const seen: unknown[] = [];
      const skimmed = await skimBytes(readRecordBytes(path, 1e6), path, (kind, read) =>
        seen.push(kind, read()),
      );
      return { skimmed, seen };
    };
    const read = await readLog(path);
    const { skimmed, seen } = await skim();
    expect(seen).toEqual(read.entries.flatMap(entry => [entry.kind, entry]));
    expect(skimmed).toMatchObject({ entries: 5, soundBytes: read.soundBytes });
    expect(skimmed.last).toMatchObject({ seq: 4, hash: read.entries.at(-1)?.hash });
    expect(skimmed).not.toHaveProperty('fault');

    writeLines(path, [...lines.slice(0, 3), lines[3]?.replace('4.5', '4.6') ?? '']);
    const altered = await skim();
    expect(altered.skimmed).toEqual({
      entries: 3,
      soundBytes: lines.slice(0, 3).join('\n').length + 1,
      last: expect.objectContaining({ seq: 2 }),
      fault: (await readLog(path)).fault,
    });
    expect(altered.skimmed.fault?.line).toBe(4);

    writeLines(path, [lines[0]?.replace('test', 'tesT') ?? '']);
    expect((await skim()).skimmed).not.toHaveProperty('last');
  });

  it('of another program is refused', async () => {
    await expect(skimBytes(Buffer.from('{"some":"thing"}\n'), 'that.jsonl', () => {})).rejects.toThrow(
      new RecordError('notOurs', 'that.jsonl is not a record of this program.'),
    );
  });
});

describe('the bytes of a file', () => {
  const code = (path: string, largest = 1e6) => {
    try {
      return readRecordBytes(path, largest).toString();
    } catch (error) {
      return error instanceof RecordError ? [error.code, error.message.replace(path, 'it')] : error;
    }
  };

  it('are read up to a size, and no further', () => {
    const path = join(tempFolder(), 'bytes');
    writeFileSync(path, '12345');
    expect(code(path, 5)).toBe('12345');
    writeFileSync(path, 'x'.repeat(2_000_001));
    expect(code(path, 2_000_000)).toEqual(['unreadable', 'it is larger than 2 MB; keep it apart.']);
  });

  it('are none where it is empty, a folder or not there', () => {
    const path = join(tempFolder(), 'bytes');
    expect(code(path)).toEqual(['unreadable', expect.stringMatching(/^it cannot be read: .+\.$/)]);
    writeFileSync(path, '');
    expect(code(path)).toEqual(['empty', 'it is empty; there is no record in it.']);
    mkdirSync(`${path}.folder`);
    expect(code(`${path}.folder`)).toEqual(['unreadable', "it is not a file; give the record's own file."]);
  });
});

describe('the time of an entry', () => {
  it('is a day that there is', () => {
    for (const day of ['2026-01-31', '2026-02-28', '2028-02-29', '2026-04-30', '2026-12-31'])
      expect(new Date(wallMs(`${day}T23:59:59.999Z`)).toISOString()).toBe(`${day}T23:59:59.999Z`);
    for (const day of ['2026-02-29', '2026-02-30', '2026-02-31', '2026-04-31', '2026-11-31'])
      expect(wallMs(`${day}T00:00:00.000Z`)).toBeNaN();
  });
});

describe('an entry', () => {
  const first = { seq: 0, kind: 'opened', prev: '0'.repeat(64), data: { format: 'first-fire-record' } };

  it('is the first by its place, its kind, nothing before it and its format together', () => {
    expect(openingRuleHolds(first)).toBe(true);
    for (const change of [
      { kind: 'reading' },
      { prev: 'ab'.repeat(32) },
      { data: {} },
      { data: { format: 'x' } },
    ])
      expect(openingRuleHolds({ ...first, ...change }), JSON.stringify(change)).toBe(false);
    expect(openingRuleHolds({ ...first, seq: 1 })).toBe(false);
    expect(openingRuleHolds({ ...first, seq: 1, kind: 'reading', data: {} })).toBe(true);
  });

  const sealed = (change: object, maxBytes = 10_000) => {
    const draft = {
      seq: 1,
      at: new Date('2026-01-02T03:04:05.678Z'),
      monoMs: 0,
      kind: 'reading',
      data: {},
      prev: 'ab'.repeat(32),
      ...change,
    };
    try {
      return sealEntry(draft, maxBytes).line.length;
    } catch (error) {
      return error instanceof RecordError ? error.message : error;
    }
  };

  it('may be as long as it may, and not a byte longer', () => {
    const length = sealed({});
    if (typeof length !== 'number') throw new Error(String(length));
    expect(sealed({}, length)).toBe(length);
    expect(sealed({}, length - 1)).toBe(
      `This event cannot be recorded: it takes ${length} bytes, more than the ${length - 1} allowed.`,
    );
  });

  it('that is none is refused by the member at fault', () => {
    expect(sealed({ monoMs: -1 })).toBe('This event cannot be recorded: monoMs must not be negative.');
    expect(sealed({ kind: '1' })).toBe(
      'This event cannot be recorded: kind must be a letter, then up to 119 letters, digits or _ . : -.',
    );
    expect(sealed({ data: [] })).toBe('This event cannot be recorded: data must be an object.');
    expect(sealed({ kind: 'opened' })).toBe(
      "This event cannot be recorded: it must begin with the entry 'opened', and have it only there.",
    );
    expect(sealed({ at: new Date(Number.NaN) })).toBe(
      'This event cannot be recorded: the wall clock gives no time.',
    );
  });
});

describe('an error of the record', () => {
  it('has its name, and its cause where there is one', () => {
    const cause = new Error('the disk');
    expect(new RecordError('disk', 'No room.').name).toBe('RecordError');
    expect(new RecordError('disk', 'No room.', cause).cause).toBe(cause);
    expect(Object.hasOwn(new RecordError('disk', 'No room.'), 'cause')).toBe(false);
  });
});
