import { readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import canonicalize from 'canonicalize';
import fc from 'fast-check';
import { beforeEach, describe, expect, it } from 'vitest';
import { isCanonicalNumber, isSurelyCanonicalObject } from '../../src/record/canonical-scan.ts';
import {
  type Entry,
  entrySchema,
  type JsonObject,
  RecordError,
  readLog,
  verifyLog,
} from '../../src/record/index.ts';
import { findNonJson } from '../../src/record/json.ts';
import { canonicalLine, checkLine, readEntry, sealEntry, sha256Hex } from '../../src/record/seal.ts';
import { tempFolder, writeRecord } from './support.ts';

/** Data as odd as JSON allows: every character, names that look like numbers or like members of an entry. */
const jsonData: fc.Arbitrary<JsonObject> = fc
  .dictionary(
    fc.oneof(
      fc.string({ unit: 'binary' }),
      fc.constantFrom('10', '9', '__proto__', 'toJSON', 'hash', ',"hash":"'),
    ),
    fc.jsonValue({ maxDepth: 4, stringUnit: 'binary' }),
  )
  .map(object => JSON.parse(JSON.stringify(object)));

let path = '';
let original = Buffer.alloc(0);
let lastHash = '';
beforeEach(async () => {
  path = join(tempFolder(), 'session.jsonl');
  const odd = fc.sample(jsonData, { seed: 1, numRuns: 12 });
  await writeRecord(path, 12, index => odd[index] ?? {});
  original = readFileSync(path);
  const verification = await verifyLog(path);
  expect(verification).toMatchObject({ ok: true });
  lastHash = verification.ok ? verification.lastHash : '';
});

async function verifyBytes(bytes: Uint8Array) {
  writeFileSync(path, bytes);
  return verifyLog(path, { lastHash });
}

const linesOf = (bytes: Buffer): string[] => bytes.toString('utf8').split('\n').slice(0, -1);

describe('no changed file is ever called sound', () => {
  it('whichever byte is changed, to whatever', async () => {
    await fc.assert(
      fc.asyncProperty(fc.nat(), fc.integer({ min: 1, max: 255 }), async (where, flip) => {
        const bytes = Buffer.from(original);
        const at = where % bytes.length;
        bytes.writeUInt8(bytes.readUInt8(at) ^ flip, at);
        const verification = await verifyBytes(bytes);
        expect(verification.ok).toBe(false);
        // The change is found in the line where it was made, or, when it split that line, in its first half.
        const line = original.subarray(0, at).toString('latin1').split('\n').length;
        expect(verification).toHaveProperty('line', line);
      }),
      { numRuns: 600 },
    );
  });

  it('whichever bytes are taken out, put in or cut off', async () => {
    await fc.assert(
      fc.asyncProperty(
        fc.nat(),
        fc.nat({ max: 300 }),
        fc.uint8Array({ maxLength: 20 }),
        async (where, cut, put) => {
          const at = where % (original.length + 1);
          const bytes = Buffer.concat([original.subarray(0, at), put, original.subarray(at + cut)]);
          const verification = await verifyBytes(bytes);
          expect(verification.ok).toBe(bytes.equals(original));
        },
      ),
      { numRuns: 600 },
    );
  });

  it('however the lines are shuffled, repeated or left out', async () => {
    const lines = linesOf(original);
    await fc.assert(
      fc.asyncProperty(fc.array(fc.nat({ max: lines.length - 1 }), { maxLength: 20 }), async picks => {
        const text = picks.map(pick => `${lines[pick]}\n`).join('');
        const verification = await verifyBytes(Buffer.from(text));
        expect(verification.ok).toBe(text === original.toString('utf8'));
        const firstWrong = picks.findIndex((pick, index) => pick !== index);
        if (!verification.ok && picks.length > 0) {
          expect(verification.line).toBe(firstWrong < 0 ? picks.length + 1 : firstWrong + 1);
        }
      }),
      { numRuns: 400 },
    );
  });

  it('one line swapped, repeated or deleted is called just that', async () => {
    const lines = linesOf(original);
    const position = fc.nat({ max: lines.length - 2 });
    await fc.assert(
      fc.asyncProperty(
        position,
        position,
        fc.constantFrom('swap', 'repeat', 'delete'),
        async (a, b, change) => {
          const [first, second] = [Math.min(a, b), Math.max(a, b) + 1];
          const [one = '', other = ''] = [lines[first], lines[second]];
          const [changed, problem, line] = {
            swap: [lines.with(first, other).with(second, one), 'reordered', first + 1] as const,
            repeat: [lines.toSpliced(second, 0, one), 'duplicated', second + 1] as const,
            delete: [lines.toSpliced(first, 1), 'missing', first + 1] as const,
          }[change];
          const verification = await verifyBytes(Buffer.from(changed.map(text => `${text}\n`).join('')));
          expect(verification).toMatchObject({ ok: false, problem, line });
        },
      ),
      { numRuns: 200 },
    );
  });
});

describe('verifying and reading always answer', () => {
  const junkLine = fc.oneof(
    fc.json(),
    fc.string({ unit: 'binary' }),
    fc
      .record({ v: fc.nat(), seq: fc.nat(), kind: fc.string(), data: fc.jsonValue(), hash: fc.string() })
      .map(o => JSON.stringify(o)),
  );
  const junkFile = fc.oneof(
    fc.uint8Array({ maxLength: 5000 }).map(bytes => Buffer.from(bytes)),
    fc.array(junkLine, { maxLength: 10 }).map(lines => Buffer.from(lines.join('\n'))),
  );

  it('whatever is in the file, or behind the record', async () => {
    await fc.assert(
      fc.asyncProperty(junkFile, fc.boolean(), async (junk, behind) => {
        const bytes = behind ? Buffer.concat([original, junk]) : junk;
        const verification = await verifyBytes(bytes);
        expect(verification.ok).toBe(behind && junk.length === 0);
        const read = await readLog(path).catch((error: unknown) => error);
        if (!(read instanceof RecordError)) {
          expect(read).toHaveProperty('entries.length', behind ? linesOf(original).length : 0);
        }
      }),
      { numRuns: 500 },
    );
  });
});

describe('a line', () => {
  const draft = fc.record({
    seq: fc.integer({ min: 1, max: Number.MAX_SAFE_INTEGER }),
    at: fc.date({ min: new Date(0), max: new Date('9999-12-31T23:59:59.999Z'), noInvalidDate: true }),
    monoMs: fc.double({ min: 0, noNaN: true, noDefaultInfinity: true }),
    kind: fc.stringMatching(/^[A-Za-z][A-Za-z0-9_.:-]{0,119}$/).filter(kind => kind !== 'opened'),
    data: jsonData,
    prev: fc.stringMatching(/^[0-9a-f]{64}$/),
  });

  it('says after reading what went into it, whatever the data', () => {
    fc.assert(
      fc.property(draft, given => {
        const { entry, line } = sealEntry(given, 1 << 20);
        const bytes = Buffer.from(line);
        const link = checkLine(bytes);
        expect(link && readEntry(link, bytes)).toEqual(entry);
        expect(canonicalLine(entry)).toBe(line);
        expect(entrySchema.safeParse(JSON.parse(line)).success).toBe(true);
      }),
      { numRuns: 500 },
    );
  });

  it('has a number taken for canonical only when it is the shortest text of its double', () => {
    const decimal = fc.stringMatching(/^-?[0-9]{1,11}(\.[0-9]{1,8})?(e[+-]?[0-9]{1,3})?$/);
    const written = fc.double().map(String);
    fc.assert(
      fc.property(fc.oneof(decimal, written), text => {
        const value = Number(text);
        expect(isCanonicalNumber(text)).toBe(Number.isFinite(value) && canonicalize(value) === text);
      }),
      { numRuns: 5000 },
    );
  });

  it('is taken for canonical at a glance only when the library would write the same', () => {
    const almostCanonical = fc
      .tuple(jsonData, fc.nat(), fc.constantFrom('', ' ', '0', '-', '.', 'e5', '"', ',', '\\', '\u0001', '1'))
      .map(([data, where, put]) => {
        const text = canonicalize(data) ?? '';
        const at = where % (text.length + 1);
        return text.slice(0, at) + put + text.slice(at);
      });
    fc.assert(
      fc.property(almostCanonical, text => {
        const bytes = Buffer.from(text);
        // What stands behind it in a line must make no difference.
        const line = Buffer.concat([bytes, Buffer.from(',"hash":"0"}')]);
        const surely = isSurelyCanonicalObject(line, 0, bytes.length);
        expect(isSurelyCanonicalObject(bytes, 0, bytes.length)).toBe(surely);
        if (!surely) return;
        const value: unknown = JSON.parse(bytes.toString());
        expect(canonicalize(value)).toBe(bytes.toString());
        expect(findNonJson(value, 'data')).toBeUndefined();
      }),
      { numRuns: 3000 },
    );
  });

  it('is taken for canonical at a glance when it holds what a session writes', () => {
    const plainText = fc.string({ unit: fc.constantFrom('a', 'Z', '°', 'é', '€', '\uffff', ' ', '/') });
    const decimal = fc.integer({ min: -999_999_999, max: 999_999_999 }).map(whole => whole / 1000);
    const plain = fc.dictionary(
      plainText,
      fc.oneof(plainText, decimal, fc.boolean(), fc.constant(null), fc.array(decimal)),
    );
    fc.assert(
      fc.property(plain, data => {
        const bytes = Buffer.from(canonicalize(data) ?? '');
        expect(isSurelyCanonicalObject(bytes, 0, bytes.length)).toBe(true);
      }),
    );
  });
});

/** The same check without a pass of our own: the whole line is parsed, and written anew by the library. */
function checkedByLibrary(line: string): Entry | undefined {
  try {
    const parsed = entrySchema.safeParse(JSON.parse(line));
    if (!parsed.success || findNonJson(parsed.data, 'entry') !== undefined) return undefined;
    const { hash, ...body } = parsed.data;
    const sound = canonicalize(parsed.data) === line && sha256Hex(canonicalize(body) ?? '') === hash;
    return sound ? parsed.data : undefined;
  } catch {
    return undefined;
  }
}

it('the check of a line and that of the library agree, on lines hashed after they were altered too', () => {
  const member = /,"hash":"[^"]{64}"(?=,"kind":"[^"]*","monoMs":[^,]*,"prev":"[^"]*","seq":[^,]*,"v":1\}$)/;
  const put = fc.constantFrom(
    '',
    '0',
    '-',
    '.5',
    'e5',
    '"',
    ',',
    ':',
    ' ',
    'A',
    '\u00e9',
    '\u{1f600}',
    '\\n',
    '}',
  );
  fc.assert(
    fc.property(
      jsonData,
      fc.nat(),
      fc.nat({ max: 2 }),
      put,
      fc.boolean(),
      (data, where, cut, piece, inTail) => {
        const at = new Date('2026-11-25T09:12:47.031Z');
        const { line } = sealEntry(
          { seq: 10, at, monoMs: 0.5, kind: 'k', data, prev: 'a'.repeat(64) },
          1 << 20,
        );
        const body = line.replace(member, '');
        const tail = body.length - 100;
        const place = inTail ? tail + (where % 100) : where % body.length;
        const altered = body.slice(0, place) + piece + body.slice(place + cut);
        const hash = sha256Hex(altered);
        const kindAt = altered.lastIndexOf(',"kind":');
        const hashed = `${altered.slice(0, kindAt)},"hash":"${hash}"${altered.slice(kindAt)}`;
        const bytes = Buffer.from(hashed);
        const link = checkLine(bytes);
        expect(link && readEntry(link, bytes)).toEqual(checkedByLibrary(bytes.toString()));
      },
    ),
    { numRuns: 1500 },
  );
});
