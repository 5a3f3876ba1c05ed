import { describe, expect, test } from 'vitest';
import { duration, limits, margin, number, shownAs, time } from '../../src/report/format.ts';
import type { Reading } from '../../src/report/model.ts';

const reading = (marginSi: number): Reading => ({
  seq: 0,
  at: '',
  timeMs: 0,
  step: '',
  phase: '',
  quantity: 'coolantTemperature',
  si: 0,
  unit: 'degC',
  source: 'confirmed',
  verdict: { met: marginSi >= 0, margin: marginSi },
});

describe('figures of a report', () => {
  test('are shown in the units of the reader: 0 degC is 32 °F, 100 kPa is 1 bar or 14.5 psi', () => {
    expect(shownAs('degC', 'us').value(0)).toBe('32 °F');
    expect(shownAs('kPa', 'metric').value(100)).toBe('1 bar');
    expect(shownAs('kPa', 'us').value(100)).toBe('14.5 psi');
  });

  test('a margin of temperatures is a difference: 10 K are 18 °F, not 50', () => {
    expect(margin(reading(10), shownAs('degC', 'us'))).toBe('+18 °F');
    expect(margin(reading(-10), shownAs('degC', 'us'))).toBe('\u221218 °F');
  });

  test('a limit that is only just broken never looks as if it were met', () => {
    expect(margin(reading(-0.001), shownAs('degC', 'metric'))).toBe('just under 0 °C');
  });

  test('a value just outside its limit is shown finer than it is spoken', () => {
    const volts = shownAs('V', 'metric');
    expect(volts.value(12.36)).toBe('12.36 V');
    expect(limits({ min: 12.39, max: 13 }, volts)).toBe('12.39 V to 13 V');
  });

  test('units that nobody knows are shown as they are, also such as every object inherits', () => {
    expect(shownAs('furlong', 'us').value(2)).toBe('2 furlong');
    expect(shownAs('constructor', 'us').value(2)).toBe('2 constructor');
  });

  test('times and lengths of time are told as people tell them, also absurd ones', () => {
    expect(time(249_000)).toBe('4:09');
    expect(time(3_849_000)).toBe('1:04:09');
    expect(time(1e300)).toBe('?');
    expect(duration(1500)).toBe('1.5 s');
    expect(duration(1_933_500)).toBe('32 min');
    expect(duration(3_840_000)).toBe('1 h 04 min');
    expect(number(-3.1449, 2)).toBe('\u22123.14');
    expect(number(Number.NaN, 2)).toBe('?');
  });
});
