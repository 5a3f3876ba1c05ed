import { mkdirSync, truncateSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { beforeEach, describe, expect, it } from 'vitest';
import { openNewLog, reopenLog, verifyLog } from '../../src/record/index.ts';
import { canonicalLine, sealEntry, sha256Hex } from '../../src/record/seal.ts';
import { HandClock, readLines, tempFolder, writeLines, writeRecord } from './support.ts';

let path = '';
let lines: string[] = [];
beforeEach(async () => {
  path = join(tempFolder(), 'session.jsonl');
  lines = await writeRecord(path, 8);
});

const line = (number: number): string => lines[number - 1] ?? '';
const hashOf = (text: string): string => JSON.parse(text).hash;

describe('verifying an untouched record', () => {
  it('says how many entries there are and gives the last hash', async () => {
    expect(await verifyLog(path)).toEqual({ ok: true, entries: 8, lastHash: hashOf(line(8)), remarks: [] });
  });

  it('agrees with the hash at the foot of the report, however it was typed', async () => {
    expect(await verifyLog(path, { lastHash: ` ${hashOf(line(8)).toUpperCase()}\n` })).toMatchObject({
      ok: true,
    });
  });

  it('says so when the record was continued after the report', async () => {
    const verification = await verifyLog(path, { lastHash: hashOf(line(5)) });
    expect(verification).toMatchObject({ ok: true, remarks: [{ kind: 'continued', line: 6 }] });
  });

  it('refuses an expected hash that is none', async () => {
    expect(await verifyLog(path, { lastHash: 'abc' })).toMatchObject({
      ok: false,
      sentence: expect.stringContaining('64 digits'),
    });
  });
});

describe('verifying names the first line at fault', () => {
  const cases: [string, (lines: string[]) => (string | undefined)[], object][] = [
    [
      'an altered value',
      l => l.with(3, l[3]?.replace('"value":4.5', '"value":4.6') ?? ''),
      { problem: 'altered', line: 4 },
    ],
    [
      'an altered hash',
      l => l.with(3, l[3]?.replace(/"hash":"./, '"hash":"g') ?? ''),
      { problem: 'altered', line: 4 },
    ],
    [
      'a blank between members',
      l => l.with(3, l[3]?.replace('","data"', '", "data"') ?? ''),
      { problem: 'altered', line: 4 },
    ],
    ['two altered lines', l => l.with(5, '{}').with(2, '{}'), { problem: 'altered', line: 3 }],
    [
      'an altered first line',
      l => l.with(0, l[0]?.replace('a test', 'a best') ?? ''),
      { problem: 'altered', line: 1 },
    ],
    ['a first line of another kind', l => l.with(0, 'rubbish'), { problem: 'altered', line: 1 }],
    ['an empty line put in', l => l.toSpliced(4, 0, ''), { problem: 'altered', line: 5 }],
    ['a deleted line', l => l.toSpliced(3, 1), { problem: 'missing', line: 4 }],
    ['three deleted lines', l => l.toSpliced(3, 3), { problem: 'missing', line: 4 }],
    ['a deleted first line', l => l.slice(1), { problem: 'missing', line: 1 }],
    ['two lines swapped', l => l.with(3, l[4] ?? '').with(4, l[3] ?? ''), { problem: 'reordered', line: 4 }],
    [
      'the first two lines swapped',
      l => l.with(0, l[1] ?? '').with(1, l[0] ?? ''),
      { problem: 'reordered', line: 1 },
    ],
    ['a line moved to the end', l => [...l.toSpliced(3, 1), l[3]], { problem: 'reordered', line: 4 }],
    [
      'a line moved towards the beginning',
      l => l.toSpliced(6, 1).toSpliced(2, 0, l[6] ?? ''),
      { problem: 'reordered', line: 3 },
    ],
    ['a line given twice in a row', l => l.toSpliced(3, 0, l[3] ?? ''), { problem: 'duplicated', line: 5 }],
    ['an early line given again at the end', l => [...l, l[1]], { problem: 'duplicated', line: 9 }],
    [
      'a late line given too early as well',
      l => l.toSpliced(2, 0, l[6] ?? ''),
      { problem: 'duplicated', line: 3 },
    ],
  ];

  it.each(cases)('%s', async (_name, change, expected) => {
    writeLines(
      path,
      change(lines).map(text => text ?? ''),
    );
    expect(await verifyLog(path)).toMatchObject({ ok: false, ...expected });
  });

  it('a line rewritten with a hash of its own', async () => {
    const { v: _v, hash: _hash, at, ...rest } = JSON.parse(line(4));
    const forged = sealEntry({ ...rest, at: new Date(at), data: { value: 99 } }, 9999).line;
    writeLines(path, lines.with(3, forged));
    expect(await verifyLog(path)).toMatchObject({ ok: false, problem: 'altered', line: 4 });
  });

  it('a sound line of another record put in', async () => {
    const { v: _v, hash: _hash, at, ...rest } = JSON.parse(line(4));
    const forged = sealEntry({ ...rest, at: new Date(at), prev: 'f'.repeat(64) }, 9999).line;
    writeLines(path, lines.toSpliced(3, 0, forged));
    expect(await verifyLog(path)).toMatchObject({ ok: false, problem: 'altered', line: 4 });
    writeLines(path, lines.toSpliced(6, 0, forged));
    expect(await verifyLog(path)).toMatchObject({ ok: false, problem: 'altered', line: 7 });
  });

  it('a line whose members stand in another order, though they say the same', async () => {
    const { at, ...rest } = JSON.parse(line(4));
    writeLines(path, lines.with(3, JSON.stringify({ ...rest, at })));
    expect(await verifyLog(path)).toMatchObject({ ok: false, problem: 'altered', line: 4 });
  });

  it('a line cut off in writing', async () => {
    const whole = Buffer.byteLength(`${lines.slice(0, 7).join('\n')}\n`);
    for (const torn of [1, 40, Buffer.byteLength(line(8))]) {
      writeLines(path, lines);
      truncateSync(path, whole + torn);
      expect(await verifyLog(path)).toMatchObject({ ok: false, problem: 'tornTail', line: 8 });
    }
  });

  it('lines cut off the end, by the hash of the report', async () => {
    writeLines(path, lines.slice(0, 6));
    expect(await verifyLog(path)).toMatchObject({ ok: true });
    const verification = await verifyLog(path, { lastHash: hashOf(line(8)) });
    expect(verification).toMatchObject({ ok: false, problem: 'missing', line: 7 });
  });

  it('a steady clock that runs backwards', async () => {
    const last = JSON.parse(line(8));
    const back = { seq: 8, at: new Date(last.at), monoMs: 1, kind: 'late', data: {}, prev: last.hash };
    writeLines(path, [...lines, sealEntry(back, 9999).line]);
    expect(await verifyLog(path)).toMatchObject({ ok: false, problem: 'clockBack', line: 9 });
  });
});

describe('a line with a hash of its own bytes that is not in canonical form is altered', () => {
  const forge = (change: (text: string) => string): string => {
    const { seq, hash: prev, at, monoMs } = JSON.parse(line(8));
    const draft = {
      seq: seq + 1,
      at: new Date(at),
      monoMs,
      kind: 'forged',
      data: { a: 1.5, b: ['é'] },
      prev,
    };
    const text = change(sealEntry(draft, 9999).line);
    const member = /"hash":"[^"]*",/;
    return text.replace(member, `"hash":"${sha256Hex(text.replace(member, ''))}",`);
  };

  it('while the canonical one is sound', async () => {
    writeLines(path, [...lines, forge(text => text)]);
    expect(await verifyLog(path)).toMatchObject({ ok: true, entries: 9 });
  });

  it.each([
    ['a blank', '"a":1.5', '"a": 1.5'],
    ['names out of order', '"a":1.5,"b":["é"]', '"b":["é"],"a":1.5'],
    ['a name given twice', '"a":1.5', '"a":1,"a":1.5'],
    ['a trailing zero', '1.5', '1.50'],
    ['a minus before zero', '1.5', '-0'],
    ['an exponent', '1.5', '15e-1'],
    ['a number too large', '1.5', '1e999'],
    ['a needless escape', 'é', String.raw`\u00e9`],
    ['half a character', 'é', String.raw`\ud83d`],
    ['data that are a list', '{"a":1.5,"b":["é"]}', '[1.5]'],
    ['data nested too deep', '1.5', `${'['.repeat(64)}${']'.repeat(64)}`],
    ['data that break off', '["é"]}', '["é"'],
    ['a steady time with a needless zero', '"monoMs":700', '"monoMs":700.0'],
    ['a number with a leading zero', '"seq":8', '"seq":08'],
    ['another version', '"v":1', '"v":2'],
    ['a member that has no place', '"v":1', '"v":1,"w":1'],
    ['a day that no month has', '2026-11-25', '2026-11-31'],
    ['an hour that no day has', 'T09:', 'T24:'],
    ['a second opening', '"kind":"forged"', '"kind":"opened"'],
    ['a kind in two words', '"kind":"forged"', '"kind":"for ged"'],
  ])('%s', async (_name, right, wrong) => {
    const forged = forge(text => text.replace(right, wrong));
    expect(forged).toContain(wrong);
    writeLines(path, [...lines, forged]);
    expect(await verifyLog(path)).toMatchObject({ ok: false, problem: 'altered', line: 9 });
  });
});

describe('the wall clock', () => {
  it('may be set back or forward, which is remarked and not a fault', async () => {
    const clock = new HandClock();
    const other = join(tempFolder(), 'jump.jsonl');
    const log = await openNewLog(other, {}, clock);
    for (const jumpMs of [0, -3_600_000, 0, 90_000, 1_500]) {
      clock.pass(1000);
      clock.wallMs += jumpMs;
      await log.append('reading', {});
    }
    await log.close();
    expect(await verifyLog(other)).toMatchObject({
      ok: true,
      remarks: [
        { line: 3, sentence: 'At line 3 the wall clock was set back by 3600.0 s.' },
        { line: 5, sentence: 'At line 5 the wall clock was set forward by 90.0 s.' },
      ],
    });
  });

  it('may have gone on for days while the program was off, but not backwards', async () => {
    const clock = new HandClock();
    clock.wallMs += 86_400_000;
    await (await reopenLog(path, () => ({ clock }))).log.close();
    expect(await verifyLog(path)).toMatchObject({ ok: true, remarks: [] });
    clock.wallMs -= 2 * 86_400_000;
    await (await reopenLog(path, () => ({ clock }))).log.close();
    expect(await verifyLog(path)).toMatchObject({ ok: true, remarks: [{ kind: 'wallClockJump', line: 10 }] });
  });
});

describe('verifying something else answers in one sentence', () => {
  const answers: [string, string | Buffer, object][] = [
    ['an empty file', '', { problem: 'unreadable' }],
    ['a text', 'Dear reader,\nthis is a letter.\n', { problem: 'notOurs', line: 1 }],
    ['a text without a newline', 'Dear reader', { problem: 'notOurs', line: 1 }],
    ['other JSON lines', '{"a":1}\n{"a":2}\n', { problem: 'notOurs', line: 1 }],
    ['a newline', '\n', { problem: 'notOurs', line: 1 }],
    ['zero bytes', Buffer.alloc(3_000_000), { problem: 'notOurs', line: 1 }],
    ['one line of many megabytes', 'x'.repeat(5_000_000), { problem: 'notOurs', line: 1 }],
    ['brackets that would exhaust a stack', '['.repeat(1_000_000), { problem: 'notOurs', line: 1 }],
  ];

  it.each(answers)('%s', async (_name, content, expected) => {
    writeFileSync(path, content);
    const verification = await verifyLog(path);
    expect(verification).toMatchObject({ ok: false, ...expected });
    expect(verification).toHaveProperty('sentence', expect.stringMatching(/^[^\n]+\.$/));
  });

  it('a folder, a device and a path that leads nowhere', async () => {
    const folder = join(tempFolder(), 'folder');
    mkdirSync(folder);
    for (const [other, words] of [
      [folder, 'is not a file'],
      ['/dev/zero', 'is not a file'],
      [join(folder, 'nothing'), 'there is no such file or folder'],
    ] as const) {
      expect(await verifyLog(other)).toMatchObject({
        ok: false,
        problem: 'unreadable',
        sentence: expect.stringContaining(words),
      });
    }
  });

  it('a giant line or a giant tail behind sound ones', async () => {
    for (const end of ['', '\n']) {
      writeFileSync(path, `${lines.join('\n')}\n${'x'.repeat(2_000_000)}${end}`);
      expect(await verifyLog(path)).toMatchObject({ ok: false, problem: 'altered', line: 9 });
    }
  });

  it('bytes that are no text, even where they decode to the same characters', async () => {
    const other = join(tempFolder(), 'replacement.jsonl');
    await writeRecord(other, 2, () => ({ heard: 'ab\ufffdcd' }));
    const bytes = Buffer.from(readLines(other).join('\n'), 'utf8');
    const at = bytes.indexOf('\ufffd');
    writeFileSync(
      other,
      Buffer.concat([bytes.subarray(0, at), Buffer.from([0xff]), bytes.subarray(at + 3), Buffer.from('\n')]),
    );
    expect(await verifyLog(other)).toMatchObject({ ok: false, problem: 'altered', line: 2 });
  });
});

it('every line of a record is the canonical form of its entry', () => {
  for (const text of lines) expect(canonicalLine(JSON.parse(text))).toBe(text);
});
