import { describe, expect, it } from 'vitest';
import { uniform } from '../../../audio-fixtures/random.ts';
import { fitLogistic, logistic } from '../../../bench/hearing/logistic.ts';

describe('a logistic regression', () => {
  it('finds the weights by which outcomes were drawn', () => {
    const random = uniform(7);
    const true_ = [-1, 2, -0.5];
    const observations = Array.from({ length: 6_000 }, () => {
      const inputs = [4 * random() - 2, 6 * random() - 3];
      const p = logistic(
        (true_[0] ?? 0) + (true_[1] ?? 0) * (inputs[0] ?? 0) + (true_[2] ?? 0) * (inputs[1] ?? 0),
      );
      return { inputs, outcome: random() < p, weight: 1 };
    });
    const found = fitLogistic(observations);
    for (const [i, weight] of true_.entries()) expect(Math.abs((found[i] ?? 0) - weight)).toBeLessThan(0.2);
  });

  it('gives the share of outcomes where nothing is known', () => {
    const outcomes = [true, true, true, false].map(outcome => ({ inputs: [], outcome, weight: 100 }));
    expect(logistic(fitLogistic(outcomes, 0.001)[0] ?? 0)).toBeCloseTo(0.75, 4);
  });
});
