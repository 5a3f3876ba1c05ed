import { join } from 'node:path';
import canonicalize from 'canonicalize';
import { describe, expect, it } from 'vitest';
import { sha256Hex } from '../../src/record/bytes-node.ts';
import { MAX_ENTRY_BYTES, MAX_LINE_BYTES } from '../../src/record/entry.ts';
import { addSignature, makeKeys, readPrivateKey, signHash } from '../../src/record/index.ts';
import { isJsonObject } from '../../src/record/json.ts';
import { recordInMemory } from '../../src/record/record-file.ts';
import { watchWallClock } from '../../src/record/remarks.ts';
import { scan, soundLink } from '../../src/record/scan.ts';
import { checkLine, type Link, sealEntry } from '../../src/record/seal.ts';
import { verifyBytes } from '../../src/record/signing.ts';
import {
  formerVocabulary,
  newerVocabulary,
  olderVocabulary,
  openedSchema,
  readRecorded,
  VOCABULARY,
} from '../../src/record/vocabulary/index.ts';
import { headerData } from '../../src/session/header.ts';
import { demoGenset, demoSix } from '../machines/helpers/profiles.ts';
import { tempFolder } from './support.ts';

describe('a wall clock beside the steady one', () => {
  /** Links by kind, wall and steady seconds; what is remarked of each, s. */
  const remarked = (...links: readonly (readonly [kind: string, wallS: number, monoS: number])[]) => {
    const watch = watchWallClock();
    return links.map(([kind, wallS, monoS], seq) => {
      const remark = watch({ kind, seq, atMs: wallS * 1000, monoMs: monoS * 1000 } as Link);
      return remark?.finding.found === 'wallClockJump' ? [remark.line, remark.finding.jumpS] : null;
    });
  };

  it('may be two seconds off from one entry to the next, forward or back', () => {
    for (const off of [2, -2, 0])
      expect(remarked(['opened', 0, 0], ['heard', 10 + off, 10])).toEqual([null, null]);
    for (const off of [2.001, -2.001])
      expect(remarked(['opened', 0, 0], ['heard', 10 + off, 10])).toEqual([
        null,
        [2, expect.closeTo(off, 9)],
      ]);
  });

  it('goes on by itself while the program is off, and is remarked only where it went back', () => {
    for (const kind of ['resumed', 'recovered']) {
      expect(remarked(['opened', 0, 0], [kind, 5000, 10])).toEqual([null, null]);
      expect(remarked(['opened', 100, 0], [kind, 98, 10])).toEqual([null, null]);
      expect(remarked(['opened', 100, 0], [kind, 97.9, 10])).toEqual([null, [2, expect.closeTo(-2.1, 9)]]);
    }
  });

  it('is held, behind a restart, against the clock of the session or against one that began anew there, by the nearer', () => {
    // The session stood at 100 s; the program is restarted, and a second later something is said.
    const until = [
      ['opened', 0, 0],
      ['heard', 100, 100],
    ] as const;
    expect(remarked(...until, ['resumed', 500, 100], ['heard', 501, 101]).slice(2)).toEqual([null, null]);
    expect(remarked(...until, ['resumed', 500, 3], ['heard', 501, 101]).slice(2)).toEqual([null, null]);
    expect(remarked(...until, ['resumed', 500, 3], ['heard', 501, 4]).slice(2)).toEqual([null, null]);
    expect(remarked(...until, ['resumed', 500, 3], ['heard', 506, 101]).slice(2)).toEqual([
      null,
      [4, expect.closeTo(5, 9)],
    ]);
    expect(remarked(...until, ['resumed', 500, 3], ['heard', 506, 4]).slice(2)).toEqual([
      null,
      [4, expect.closeTo(5, 9)],
    ]);
  });

  it('is held against where the session had come to, over several restarts', () => {
    expect(
      remarked(
        ['opened', 0, 0],
        ['heard', 100, 100],
        ['resumed', 500, 3],
        ['recovered', 900, 3],
        ['heard', 901, 101],
        ['heard', 902, 102],
      ),
    ).toEqual([null, null, null, null, null, null]);
  });
});

describe('a line', () => {
  const line = (length: number) => {
    const draft = {
      seq: 0,
      at: new Date(0),
      monoMs: 0,
      kind: 'opened',
      prev: '0'.repeat(64),
    };
    const data = (text: string) => ({ format: 'first-fire-record', text });
    const empty = sealEntry({ ...draft, data: data('') }, MAX_LINE_BYTES).line.length;
    return Buffer.from(
      sealEntry({ ...draft, data: data('x'.repeat(length - empty)) }, MAX_LINE_BYTES + 1).line,
    );
  };
  const raw = (bytes: Buffer, terminated = true) => ({ bytes, terminated, endByte: bytes.length });

  it('is sound up to its longest, whole, and in UTF-8', () => {
    expect(soundLink(raw(line(MAX_LINE_BYTES)))).toMatchObject({ seq: 0, kind: 'opened' });
    expect(soundLink(raw(line(MAX_LINE_BYTES + 1)))).toBeUndefined();
    expect(soundLink(raw(line(500), false))).toBeUndefined();
    const broken = line(500);
    broken[200] = 0xff;
    expect(soundLink(raw(broken))).toBeUndefined();
  });

  it('begins a record by its kind and its format, and neither stands anywhere else', () => {
    const sealed = (seq: number, kind: string, data: object) => {
      const body = { at: new Date(0).toISOString(), data, kind, monoMs: 0, prev: '0'.repeat(64), seq, v: 1 };
      const hash = sha256Hex(canonicalize(body) ?? '');
      return Buffer.from(canonicalize({ ...body, hash }) ?? '');
    };
    const format = { format: 'first-fire-record' };
    expect(checkLine(sealed(0, 'opened', format))).toMatchObject({ seq: 0, kind: 'opened' });
    expect(checkLine(sealed(1, 'reading', {}))).toMatchObject({ seq: 1, kind: 'reading' });
    for (const [seq, kind, data] of [
      [0, 'reading', {}],
      [0, 'opened', {}],
      [1, 'opened', format],
    ] as const)
      expect(checkLine(sealed(seq, kind, data)), `${seq} ${kind}`).toBeUndefined();
  });

  it('is none where its data are no object as the record writes it, however well it is hashed', () => {
    const sealed = (data: string) => {
      const body = (hash: string) =>
        `{"at":"${new Date(0).toISOString()}","data":${data}${hash},"kind":"reading","monoMs":0,"prev":"${'0'.repeat(64)}","seq":1,"v":1}`;
      return Buffer.from(body(`,"hash":"${sha256Hex(body(''))}"`));
    };
    for (const good of ['{}', '{"a":"\\n"}', '{"🔧":1}']) expect(checkLine(sealed(good)), good).toBeDefined();
    for (const bad of [
      '[]',
      '1',
      'null',
      '{"b":1,"a":2}',
      '{"a":1e5}',
      '{"a":"\\u0041"}',
      '{"a":"\\ud83d"}',
      '{"a"',
      '{"a":1 }',
    ])
      expect(checkLine(sealed(bad)), bad).toBeUndefined();
  });

  it('that is not ended is torn where it may be the beginning of an entry, and else none of this record', async () => {
    const stop = async (length: number) =>
      (await scan(recordInMemory(Buffer.alloc(length, '{')), () => {})).stop?.kind;
    expect(await stop(MAX_ENTRY_BYTES)).toBe('torn');
    expect(await stop(MAX_ENTRY_BYTES + 1)).toBe('unsound');
  });
});

describe('an object of JSON', () => {
  it('is neither null nor a list, nor anything that is no object', () => {
    expect([{}, { a: 1 }].map(isJsonObject)).toEqual([true, true]);
    for (const other of [null, [], [1], 'text', 1, true, undefined]) expect(isJsonObject(other)).toBe(false);
  });
});

describe('the vocabulary of a record', () => {
  const restart = (vocabulary?: number, kind = 'resumed') => ({
    kind,
    data: vocabulary === undefined ? {} : { vocabulary },
  });

  it('is too old to be carried out where any part of it is older than the seventh', () => {
    expect(olderVocabulary([restart(7, 'opened'), restart(VOCABULARY)])).toBeNull();
    expect(olderVocabulary([restart(6, 'opened'), restart(VOCABULARY)])).toBe(6);
    expect(olderVocabulary([restart(VOCABULARY, 'opened'), restart(2, 'recovered')])).toBe(2);
    // One that names none is of the first.
    expect(olderVocabulary([restart(undefined, 'opened')])).toBe(1);
    expect(olderVocabulary([{ kind: 'problem', data: { vocabulary: 1 } }])).toBeNull();
    expect(olderVocabulary([])).toBeNull();
  });

  it('may lead elsewhere in places where any part of it is older than the ninth', () => {
    expect(formerVocabulary([restart(9, 'opened'), restart(VOCABULARY)])).toBeNull();
    expect(formerVocabulary([restart(VOCABULARY, 'opened'), restart(8)])).toBe(8);
    expect(formerVocabulary([])).toBeNull();
  });

  it('is too new where any part of it is', () => {
    expect(newerVocabulary([restart(VOCABULARY + 1, 'opened'), restart(VOCABULARY)])).toBe(VOCABULARY + 1);
    expect(newerVocabulary([restart(VOCABULARY)])).toBeNull();
  });
});

describe('the first entry of a session', () => {
  const job = { vehicle: ' V ', engine: 'E', technician: 'T', second: 'S', supervisor: 'U' };
  const opened = (change: object) =>
    openedSchema.safeParse({
      ...headerData({ profile: demoSix, job, language: 'en', units: 'metric' }),
      ...change,
    });

  it('names who works on what, without the blanks around it, and in eighty letters', () => {
    expect(opened({}).data?.job.vehicle).toBe('V');
    const named = (vehicle: string) => opened({ job: { ...job, vehicle } }).success;
    expect(['x'.repeat(80), 'x'.repeat(81), ' ', ''].map(named)).toEqual([true, false, false, false]);
    const detailed = (serial: string) => opened({ job: { ...job, serial } }).success;
    expect(['', 'x'.repeat(160), 'x'.repeat(161)].map(detailed)).toEqual([true, true, false]);
  });

  it('of an older record says nothing of what was not asked for yet', () => {
    const { fuelling: _f, prelube: _p, turbo: _t, firstRun: _r, starter, ...rest } = demoSix;
    const { burstsInARow: _b, ...olderStarter } = starter;
    const { success, data } = opened({ profile: { ...rest, starter: olderStarter } });
    expect(success).toBe(true);
    expect(data?.profile).toMatchObject({
      turbo: false,
      prelube: null,
      firstRun: null,
      fuelling: { disabledBy: 'electric', at: 'injector harness plug' },
      starter: { burstsInARow: 1 },
    });
    expect(opened({ profile: { starter: 'none' } }).success).toBe(false);
    expect(opened({ profile: null }).success).toBe(false);
  });

  it('of one in which nothing was given back, and no mode switch asked for, says so of its set', () => {
    const { handsBack: _h, ...older } = demoGenset;
    const use = { kind: 'generator', autoStart: 'panel', breaker: 'breaker' };
    const before = opened({ profile: { ...older, use } }).data?.profile;
    expect(before).toMatchObject({ handsBack: false, use: { ...use, modeSwitch: null } });
    const now = opened({ profile: demoGenset }).data?.profile;
    expect(now).toMatchObject({ handsBack: true, use: { modeSwitch: 'mode switch of the control panel' } });
  });

  it('stands at the beginning and is told there: no other place says anything by it', () => {
    const entry = (seq: number, kind: string, monoMs = 0) =>
      ({ v: 1, seq, at: new Date(0).toISOString(), monoMs, kind, data: {}, prev: '', hash: '' }) as const;
    expect(readRecorded([entry(0, 'opened'), entry(1, 'opened'), entry(2, 'nothingOfTheKind')])).toEqual({
      entries: [],
      notUnderstood: [2],
    });
  });
});

describe('a signature', () => {
  it('of what is no key and no signature does not hold, and throws nothing', () => {
    expect(verifyBytes(Buffer.from('x'), 'no key', 'no signature')).toBe(false);
    expect(verifyBytes(Buffer.from('x'), 'ab'.repeat(32), '')).toBe(false);
  });

  it('that cannot be kept is told so', async () => {
    const { privatePem } = makeKeys();
    const signature = signHash('ab'.repeat(32), readPrivateKey(privatePem, 'k'), 'bay', new Date(0));
    await expect(addSignature(join(tempFolder(), 'nowhere', 'x.jsonl'), signature)).rejects.toThrow(
      /cannot be written: /,
    );
  });
});
