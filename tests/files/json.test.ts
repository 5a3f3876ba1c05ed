import { describe, expect, it } from 'vitest';
import { readJson } from '../../src/files/json.ts';

const twenty = '"key": 1,\n'.repeat(20);

describe('what somebody wrote as JSON', () => {
  it('is read', () => {
    expect(readJson('{"a": [1, null]}')).toEqual({ ok: true, data: { a: [1, null] } });
    expect(readJson(' [] ')).toEqual({ ok: true, data: [] });
  });

  it.each([
    ['', 'it is empty'],
    [' \n', 'it is empty'],
    ['# first-fire\n', 'it does not begin with "{"'],
    ['RIFF', 'it does not begin with "{"'],
    ['{"a": [1', 'it breaks off before its end'],
    ['{\n"a": 1\n"b": 2}', 'line 3 is wrong'],
    ['{\n"a": 1,\n}', 'line 3 is wrong'],
    ['{"a": 1}\n\nand more', 'line 3 is wrong'],
    // What the engine tells by its surroundings only.
    [`{\n${twenty}"list": [1, 2,],\n"last": "that is so much text"}`, 'line 22 is wrong'],
    [`{\n"other": nobody,\n${twenty}"list": 1}`, 'line 2 is wrong'],
    // It stands there twenty times.
    [`{\n${'"key": 1,\n'.repeat(5)}"key": 1x,\n"key": 1}`, 'line 7 is wrong'],
    ['[nobody]', 'something in it is wrong'],
  ])('and is told by its line where it is wrong: %j', (text, why) => {
    expect(readJson(text)).toEqual({ ok: false, why });
  });
});
