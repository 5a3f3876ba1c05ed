import { describe, expect, it } from 'vitest';
import { gridStep, longUpToRpm, slopes, speeds, steady } from '../../../src/engineering/engine-sound/grid.ts';

describe('the speeds that are told apart', () => {
  it('begin at 90 rpm and go up to the last that is not above 3,800', () => {
    expect(speeds[0]).toBe(90);
    expect(speeds.at(-1)).toBeLessThanOrEqual(3_800);
    expect((speeds.at(-1) ?? 0) * Math.exp(gridStep)).toBeGreaterThan(3_800);
  });

  it('are each higher than the one before by 0.8 % (e^0.008)', () => {
    for (let i = 1; i < speeds.length; i++)
      expect(Math.log((speeds[i] ?? 0) / (speeds[i - 1] ?? 0))).toBeCloseTo(0.008, 9);
  });

  it('have those of cranking and those of an idle among them', () => {
    expect(speeds.filter(rpm => rpm < longUpToRpm).length).toBeGreaterThan(100);
    expect(speeds.filter(rpm => rpm >= longUpToRpm).length).toBeGreaterThan(200);
  });
});

describe('the rises that are told apart', () => {
  it('are as many up as down, as steep, in order, with none in the middle', () => {
    expect(slopes.map(slope => 0 - slope).toReversed()).toEqual(slopes);
    expect([...slopes].sort((a, b) => a - b)).toEqual(slopes);
    expect(slopes[steady]).toBe(0);
  });
});
