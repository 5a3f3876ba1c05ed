import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { secondsToReach, temperatureAfter } from '../../src/engineering/lumped-heat.ts';
import { between } from './properties.ts';

const celsius = between(-50, 300);
const timeConstantS = between(1, 3600);

describe('one lump of metal', () => {
  test('is as warm after the time worked out as it was to become', () => {
    const share = between(0.01, 0.99);
    fc.assert(
      fc.property(celsius, celsius, timeConstantS, share, (startC, endC, tau, way) => {
        fc.pre(Math.abs(startC - endC) > 1);
        const lump = { startC, endC, timeConstantS: tau };
        const targetC = startC + (endC - startC) * way;
        expect(temperatureAfter(lump, secondsToReach(lump, targetC))).toBeCloseTo(targetC, 6);
      }),
    );
  });

  test('is as warm after two spells as after one as long as both', () => {
    const seconds = between(0, 3600);
    fc.assert(
      fc.property(celsius, celsius, timeConstantS, seconds, seconds, (startC, endC, tau, a, b) => {
        const lump = { startC, endC, timeConstantS: tau };
        const midway = temperatureAfter(lump, a);
        const twice = temperatureAfter({ ...lump, startC: midway }, b);
        expect(twice).toBeCloseTo(temperatureAfter(lump, a + b), 6);
      }),
    );
  });

  test('needs no time for a temperature it has passed, and for ever for one it never reaches', () => {
    const cooling = { startC: 100, endC: 20, timeConstantS: 60 };
    expect(secondsToReach(cooling, 100)).toBe(0);
    expect(secondsToReach(cooling, 20)).toBe(Number.POSITIVE_INFINITY);
    const warming = { startC: 20, endC: 100, timeConstantS: 60 };
    expect(secondsToReach(warming, 10)).toBe(0);
    expect(secondsToReach(warming, 101)).toBe(Number.POSITIVE_INFINITY);
  });
});
