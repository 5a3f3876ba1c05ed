import { describe, expect, it } from 'vitest';
import { isCanonicalNumber, isSurelyCanonicalObject } from '../../src/record/canonical-scan.ts';
import { MAX_DEPTH } from '../../src/record/json.ts';
import { readTail } from '../../src/record/line-tail.ts';

const surely = (text: string, from = '', behind = ''): boolean => {
  const start = Buffer.byteLength(from);
  return isSurelyCanonicalObject(Buffer.from(from + text + behind), start, start + Buffer.byteLength(text));
};

const canonical = [
  '{}',
  '{"a":1}',
  '{"":0}',
  '{"a":true,"b":false,"c":null,"d":"x"}',
  '{"a":[],"b":[1],"c":[1,"x",[null],{}],"d":{"e":{}}}',
  // A name that begins like another comes behind it; bytes sort as their characters do.
  '{"a":1,"ab":2,"b":3,"é":4,"€":5}',
  '{"text":"zwölf Grad – 12 °C, ½ €"}',
  '{"a":"x,y}]:","b":"{"}',
];

describe('an object that is surely canonical (RFC 8785)', () => {
  it.each(canonical)('%s', text => {
    expect(surely(text)).toBe(true);
    expect(surely(text, 'before', 'behind')).toBe(true);
  });

  it.each(canonical)('is none any more where it is cut short, or where it ends is told wrongly: %s', text => {
    const bytes = Buffer.from(text);
    for (let end = 0; end < bytes.length; end += 1) {
      expect(isSurelyCanonicalObject(bytes.subarray(0, end), 0, end), String(end)).toBe(false);
      expect(isSurelyCanonicalObject(bytes, 0, end), String(end)).toBe(false);
    }
    expect(isSurelyCanonicalObject(bytes, 0, bytes.length + 1)).toBe(false);
  });

  it.each([
    '',
    '[]',
    '1',
    '{"a":1,}',
    '{,"a":1}',
    '{"a"1}',
    '{"a" :1}',
    '{"a": 1}',
    '{ }',
    '{a:1}',
    '{"a":1;"b":2}',
    '{"a":1"b":2}',
    '{"b":1,"a":2}',
    '{"ab":1,"a":2}',
    '{"a":1,"a":2}',
    '{"":1,"":2}',
    '{"a":[1,]}',
    '{"a":[,1]}',
    '{"a":[1 ]}',
    '{"a":[1;2]}',
    '{"a":[1}',
    '{"a":tru}',
    '{"a":trux}',
    '{"a":falsy}',
    '{"a":nul}',
    '{"a":nulL}',
    '{"a":undefined}',
    '{"a":}',
  ])('is not %s', text => {
    expect(surely(text)).toBe(false);
  });

  it('may be one, but not surely, with an escape or a character of four bytes in it; a bare control character is none', () => {
    for (const text of [
      '{"a":"\\n"}',
      '{"a":"\\u0041"}',
      '{"\\"":1}',
      '{"a":"🔧"}',
      '{"🔧":1}',
      '{"a":"\u001f"}',
    ])
      expect(surely(text), text).toBe(false);
    // The last that are not: a space, and U+FFFD.
    for (const text of ['{"a":" "}', '{"a":"\uFFFD"}']) expect(surely(text), text).toBe(true);
  });

  it('is nested as deep as data may be, and no deeper', () => {
    const objects = (levels: number) => `${'{"a":'.repeat(levels)}1${'}'.repeat(levels)}`;
    const lists = (levels: number) => `{"a":${'['.repeat(levels - 1)}${']'.repeat(levels - 1)}}`;
    for (const nested of [objects, lists]) {
      expect(surely(nested(MAX_DEPTH))).toBe(true);
      expect(surely(nested(MAX_DEPTH + 1))).toBe(false);
    }
  });
});

describe('a canonical number', () => {
  /** In a text, and as a member, at the end of a list and of an object. */
  const isOne = (text: string) => {
    const places = [`{"a":${text}}`, `{"a":[${text}]}`, `{"a":${text},"b":1}`].map(each => surely(each));
    const all = new Set([isCanonicalNumber(text), ...places]);
    return all.size === 1 ? places[0] : `differs: ${[...all].join()}`;
  };

  it.each([
    '0',
    '1',
    '-1',
    '10',
    '123456789',
    '1234567890',
    '9007199254740991',
    '0.5',
    '-0.5',
    '1.000001',
    '123456789.123456',
    '0.1234567',
    '0.000001',
    '1e-7',
    '1.5e-9',
    '1e+21',
    '1.7976931348623157e+308',
    '5e-324',
    '-0.0000033333333333333333',
    '0.30000000000000004',
  ])('is %s', text => {
    expect(isOne(text)).toBe(true);
  });

  it.each([
    '-0',
    '00',
    '01',
    '-01',
    '1.',
    '.5',
    '-.5',
    '1.0',
    '1.50',
    '0.0',
    '-',
    '+1',
    '1e5',
    '1E+21',
    '1e21',
    '0x1',
    '1_0',
    'NaN',
    'Infinity',
    '-Infinity',
    '0.0000001',
    '1.2.3',
    '12345678901234567890',
    '0.1000000000000000055511151231257827',
    '1 ',
  ])('is not %j', text => {
    expect(isOne(text)).toBe(false);
  });
});

describe('the end of a line, taken apart', () => {
  const hash = 'ab'.repeat(32);
  const prev = 'cd'.repeat(32);
  const tail = (parts: { mono?: string; kind?: string; seq?: string } = {}) =>
    `,"hash":"${hash}","kind":"${parts.kind ?? 'reading'}","monoMs":${parts.mono ?? '12.5'},"prev":"${prev}","seq":${parts.seq ?? '7'},"v":1}`;
  const data = '{"at":"2026-01-02T03:04:05.678Z","data":{}';

  it('has its members, and where the hash stands', () => {
    expect(readTail(data + tail())).toEqual({
      hashStart: data.length,
      hashEnd: data.length + ',"hash":"'.length + 65,
      hash,
      kind: 'reading',
      monoMs: 12.5,
      prev,
      seq: 7,
    });
    // Nothing need stand before it.
    expect(readTail(tail())).toMatchObject({ hashStart: 0, seq: 7 });
  });

  it('is none where any of what stands between the members is another, or where it begins too late', () => {
    const line = tail();
    const members = [hash, 'reading', '12.5', prev, '7'].map(member => {
      const at = line.indexOf(member);
      return [at, at + member.length] as const;
    });
    for (let at = 0; at < line.length; at += 1) {
      if (members.some(([from, to]) => at >= from && at < to)) continue;
      const other = `${line.slice(0, at)}~${line.slice(at + 1)}`;
      expect(readTail(data + other), `${at}: ${other}`).toBeUndefined();
      expect(readTail(line.slice(at + 1)), String(at)).toBeUndefined();
    }
    expect(readTail('')).toBeUndefined();
  });

  it('has a number of the entry as it is written: whole, and without a nought before it', () => {
    const seq = (text: string) => readTail(data + tail({ seq: text }))?.seq;
    expect(['0', '10', '9007199254740991'].map(seq)).toEqual([0, 10, 9_007_199_254_740_991]);
    for (const text of ['', '07', '00', '-1', '1.5', '9007199254740992', 'x'])
      expect(seq(text), text).toBeUndefined();
  });

  it('has a time as it is written, not below nothing', () => {
    const mono = (text: string) => readTail(data + tail({ mono: text }))?.monoMs;
    expect(['0', '0.001', '1e-7'].map(mono)).toEqual([0, 0.001, 1e-7]);
    for (const text of ['', '-1', '01', '1.0', '1e400', 'NaN', '1'.repeat(26)])
      expect(mono(text), text).toBeUndefined();
    // The longest of them: 25 characters.
    expect(mono('0.0000033333333333333333')).toBe(0.0000033333333333333333);
  });

  it('has a kind: a letter, then up to 119 letters, digits or _ . : -', () => {
    const kind = (text: string) => readTail(data + tail({ kind: text }))?.kind;
    const longest = `k${'x'.repeat(119)}`;
    for (const text of ['k', 'a_b.c:d-9', longest]) expect(kind(text)).toBe(text);
    for (const text of ['', '9', `${longest}x`, 'a b', 'ä']) expect(kind(text), text).toBeUndefined();
  });
});
