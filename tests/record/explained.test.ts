import { describe, expect, it } from 'vitest';
import {
  type ChainFinding,
  englishFindings,
  type RemarkFinding,
  sentenceOf,
} from '../../src/record/findings.ts';
import { findNonJson, MAX_DEPTH } from '../../src/record/json.ts';

describe('what is found wrong in a record is said in one sentence, with the line and all that it needs', () => {
  const found: readonly (readonly [ChainFinding, RegExp])[] = [
    [{ found: 'notOurs', line: 1 }, /^This file is not a record of this program\.$/],
    [
      { found: 'torn', line: 4 },
      /^Line 4 breaks off: writing was cut short; the 3 lines before it are sound\.$/,
    ],
    [{ found: 'altered', line: 4 }, /^Line 4 was altered: its content is not what its hash says\.$/],
    [
      { found: 'clockBack', line: 4, monoMs: 90, beforeMs: 100 },
      /^Line 4 runs backwards: .* 90 ms, before the 100 ms of line 3\.$/,
    ],
    [
      { found: 'duplicated', line: 4, twinLine: 2 },
      /^Line 4 is duplicated: the same entry stands in line 2\.$/,
    ],
    [
      { found: 'renumbered', line: 4, seq: 1 },
      /^Line 4 was put in or rewritten: it bears number 1, which line 2 has already\.$/,
    ],
    [
      { found: 'putIn', line: 4, rightfulLine: 5 },
      /^Line 4 was put in: the entry that belongs there stands in line 5\.$/,
    ],
    [
      { found: 'reordered', line: 4, rightfulLine: 6 },
      /^Line 4 is out of order: the entry that belongs there stands in line 6\.$/,
    ],
    [
      { found: 'missing', line: 4, expected: 3, seq: 4 },
      /^Before line 4, 1 entry is missing: number 3 should stand there, and 4 does\.$/,
    ],
    [
      { found: 'missing', line: 4, expected: 3, seq: 8 },
      /^Before line 4, 5 entries are missing: number 3 should stand there, and 8 does\.$/,
    ],
    [
      { found: 'rehashed', line: 4 },
      /^Line 4 was altered and given a new hash: line 5 was written after another line 4\.$/,
    ],
    [
      { found: 'cutOff', line: 4 },
      /^The record ends at line 3 without the hash of the report: lines after it are missing, or/,
    ],
  ];

  it.each(found)('%j', (finding, sentence) => {
    expect(sentenceOf(englishFindings.chain, finding)).toMatch(sentence);
  });

  const remarks: readonly (readonly [RemarkFinding, string])[] = [
    [
      { found: 'wallClockJump', line: 4, jumpS: 60.04 },
      'At line 4 the wall clock was set forward by 60.0 s.',
    ],
    [{ found: 'wallClockJump', line: 4, jumpS: -2.5 }, 'At line 4 the wall clock was set back by 2.5 s.'],
    [
      { found: 'continued', line: 4, more: 7 },
      'The report was made at line 3; 7 more lines were recorded after it.',
    ],
  ];

  it.each(remarks)('and so is what is only worth knowing: %j', (finding, sentence) => {
    expect(sentenceOf(englishFindings.remarks, finding)).toBe(sentence);
  });

  it('and why a signature does not hold', () => {
    expect(englishFindings.signature.otherKeyId).toMatch(/its key is not the one that its key id names/);
    expect(englishFindings.signature.altered).toMatch(/altered, or made with another key/);
    expect(englishFindings.signature.otherRecord).toMatch(/another record, .* changed or continued since/);
  });
});

describe('what JSON cannot hold is named by where it stands', () => {
  const cases: readonly (readonly [unknown, string])[] = [
    [Number.NaN, 'data is NaN, not a finite number'],
    [{ readings: [1, 2, Number.POSITIVE_INFINITY] }, 'data.readings[2] is Infinity, not a finite number'],
    [{ a: { b: undefined } }, 'data.a.b is of type undefined'],
    [{ a: 1n }, 'data.a is of type bigint'],
    [{ at: new Date(0) }, 'data.at is not a plain object'],
    [{ text: '\uD83D' }, 'data.text holds half a character'],
    [{ inner: { '\uD83D': 1 } }, 'a name in data.inner holds half a character'],
    [Object.assign(new Array(2), [1]), 'data[1] is of type undefined'],
  ];

  it.each(cases)('%o', (value, words) => {
    expect(findNonJson(value, 'data')).toBe(words);
  });

  it('and what it can hold is fine', () => {
    const bare: Record<string, unknown> = Object.assign(Object.create(null), { a: 1 });
    for (const value of [null, true, false, 0, -1.5, '', '🔧', [], {}, [null, { a: ['b'] }], bare])
      expect(findNonJson(value, 'data')).toBeUndefined();
  });

  it('down to a depth of 64, and no deeper', () => {
    const nested = (levels: number): unknown => (levels === 0 ? 1 : { a: nested(levels - 1) });
    const listed = (levels: number): unknown => (levels === 0 ? 1 : [listed(levels - 1)]);
    for (const make of [nested, listed]) {
      expect(findNonJson(make(64), 'data')).toBeUndefined();
      expect(findNonJson(make(65), 'data')).toMatch(/ is nested deeper than 64 levels$/);
    }
    expect(MAX_DEPTH).toBe(64);
  });
});
