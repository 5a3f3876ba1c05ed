import { expect, test } from 'vitest';
import { tenKelvinS } from '../../src/engineering/warm-up-pace.ts';

const readings = (...values: readonly number[]) =>
  values.map((value, index) => ({ timeS: 60 * index, value }));
const paceOf = (values: readonly number[], opensC = 82) => {
  const result = tenKelvinS(readings(...values), opensC);
  return result.ok ? result.value : result.issue.code;
};

test('the warm-up is told in seconds for ten kelvin', () => {
  // 5 K a minute.
  expect(paceOf([20, 25, 30, 35])).toBeCloseTo(120, 9);
});

test('what is read from the opening of the thermostat on is left out', () => {
  expect(paceOf([62, 72, 81.9, 82, 82, 82])).toBeCloseTo(60, 0);
});

test('one odd reading changes little', () => {
  expect(paceOf([20, 25, 30, 60, 40, 45, 50])).toBeCloseTo(120, 9);
});

test('nothing is claimed from too little, from cooling, or from what is no reading', () => {
  expect(paceOf([20, 40])).toBe('tooLittleData');
  expect(paceOf([60, 70, 85])).toBe('tooLittleData');
  expect(paceOf([60, 50, 40, 30])).toBe('tooLittleData');
  expect(paceOf([20, 20, 20, 20])).toBe('tooLittleData');
  expect(paceOf([])).toBe('tooLittleData');
  expect(paceOf([20, Number.NaN, 40])).toBe('notANumber');
  expect(paceOf([20, 30, 40], 200)).toBe('outOfRange');
});
