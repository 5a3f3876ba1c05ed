import { describe, expect, test } from 'vitest';
import { dateTime, duration, limits, margin, number, shownAs, time } from '../../src/report/format.ts';
import { mannerOf } from '../../src/report/manner.ts';

const us = mannerOf('en', 'us');
const metric = mannerOf('en', 'metric');

/** A value so far inside or outside of a limit from below at nought. */
const held = (marginSi: number) => ({
  value: marginSi,
  verdict: { met: marginSi >= 0, margin: marginSi, min: 0 },
});

describe('figures of a report', () => {
  test('are shown in the units of the reader: 0 degC is 32 °F, 100 kPa is 1 bar or 14.5 psi', () => {
    expect(shownAs('degC', us).value(0)).toBe('32 °F');
    expect(shownAs('kPa', metric).value(100)).toBe('1 bar');
    expect(shownAs('kPa', us).value(100)).toBe('14.5 psi');
  });

  test('a margin of temperatures is a difference: 10 K are 18 °F, not 50', () => {
    expect(margin(held(10), shownAs('degC', us), us)).toBe('18 °F to spare');
    expect(margin(held(-10), shownAs('degC', us), us)).toBe('18 °F too low');
  });

  test('a limit that is only just broken never looks as if it were met', () => {
    expect(margin(held(-0.001), shownAs('degC', metric), metric)).toBe('hardly anything too low');
  });

  test('a margin says on which side of its limits a value lies, and when it lies on one', () => {
    const volts = shownAs('V', metric);
    const at = (value: number, left: number) => ({
      value,
      verdict: { met: left >= 0, margin: left, min: 12, max: 13 },
    });
    expect(margin(at(13.2, -0.2), volts, metric)).toBe('0.2 V too high');
    expect(margin(at(11.8, -0.2), volts, metric)).toBe('0.2 V too low');
    expect(margin(at(12, 0), volts, metric)).toBe('on the limit');
  });

  test('a value just outside its limit is shown finer than it is spoken', () => {
    const volts = shownAs('V', metric);
    expect(volts.value(12.36)).toBe('12.36 V');
    expect(limits({ min: 12.39, max: 13 }, volts, metric)).toBe('12.39 V to 13 V');
  });

  test('units that nobody knows are shown as they are, also such as every object inherits', () => {
    expect(shownAs('furlong', us).value(2)).toBe('2 furlong');
    expect(shownAs('constructor', us).value(2)).toBe('2 constructor');
  });

  test('times and lengths of time are told as people tell them, also absurd ones', () => {
    expect(time(249_000)).toBe('4:09');
    expect(time(3_849_000)).toBe('1:04:09');
    expect(time(1e300)).toBe('?');
    expect(duration(1500, metric)).toBe('1.5 s');
    expect(duration(1_933_500, metric)).toBe('32 min');
    expect(duration(3_840_000, metric)).toBe('1 h 04 min');
    expect(number(-3.1449, 2, metric)).toBe('\u22123.14');
    expect(number(Number.NaN, 2, metric)).toBe('?');
  });

  test('are written in French with a comma, and their unit on the same line', () => {
    const french = mannerOf('fr', 'metric');
    const volts = shownAs('V', french);
    expect(volts.value(12.36)).toBe('12,36\u00a0V');
    expect(shownAs('rpm', french).value(750)).toBe('750\u00a0tr/min');
    expect(limits({ min: 12.39, max: 13 }, volts, french)).toBe('12,39\u00a0V à 13\u00a0V');
    expect(margin(held(-0.001), shownAs('degC', french), french)).toBe('trop bas de presque rien');
    expect(margin(held(-0.4), shownAs('degC', french), french)).toBe('trop bas de 0,4\u00a0°C');
    expect(duration(1500, french)).toBe('1,5\u00a0s');
    expect(number(-3.1449, 2, french)).toBe('\u22123,14');
  });

  test('tell a day as the language does: the first of a month is "1er" in French', () => {
    expect(dateTime('2026-01-02T03:04:05.000Z', metric)).toBe('2 January 2026, 03:04 UTC');
    expect(dateTime('2026-01-02T03:04:05.000Z', mannerOf('fr', 'metric'))).toBe('2 janvier 2026 à 03:04 UTC');
    expect(dateTime('2026-08-01T23:59:05.000Z', mannerOf('fr', 'us'))).toBe('1er août 2026 à 23:59 UTC');
    expect(dateTime('never', metric)).toBe('never');
  });

  test('are counted by the grammar of the language: nought is one gate in French, many in English', () => {
    const counted = { one: '{n} one', many: '{n} many' };
    expect([0, 1, 2].map(n => metric.counted(n, counted))).toEqual(['0 many', '1 one', '2 many']);
    expect([0, 1, 2].map(n => mannerOf('fr', 'us').counted(n, counted))).toEqual([
      '0 one',
      '1 one',
      '2 many',
    ]);
  });
});
