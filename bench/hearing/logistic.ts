/** Something that was so or not, and what was known of it. */
export interface Observation {
  readonly inputs: readonly number[];
  readonly outcome: boolean;
  readonly weight: number;
}

const dot = (a: readonly number[], b: readonly number[]) =>
  a.reduce((sum, each, i) => sum + each * (b[i] ?? 0), 0);
export const logistic = (x: number) => 1 / (1 + Math.exp(-x));

/** Solves a system of linear equations by elimination; the rows are changed. */
function solve(rows: number[][], right: number[]): number[] {
  const n = right.length;
  for (let column = 0; column < n; column++) {
    let pivot = column;
    for (let r = column; r < n; r++)
      if (Math.abs(rows[r]?.[column] ?? 0) > Math.abs(rows[pivot]?.[column] ?? 0)) pivot = r;
    [rows[column], rows[pivot]] = [rows[pivot] as number[], rows[column] as number[]];
    [right[column], right[pivot]] = [right[pivot] as number, right[column] as number];
    const top = rows[column] as number[];
    for (let r = column + 1; r < n; r++) {
      const row = rows[r] as number[];
      const factor = (row[column] ?? 0) / (top[column] ?? 1);
      for (let c = column; c < n; c++) row[c] = (row[c] ?? 0) - factor * (top[c] ?? 0);
      right[r] = (right[r] ?? 0) - factor * (right[column] ?? 0);
    }
  }
  const solved = new Array<number>(n).fill(0);
  for (let r = n - 1; r >= 0; r--) {
    const row = rows[r] as number[];
    const known = row.reduce((sum, each, c) => (c > r ? sum + each * (solved[c] ?? 0) : sum), 0);
    solved[r] = ((right[r] ?? 0) - known) / (row[r] ?? 1);
  }
  return solved;
}

/**
 * Weights of a logistic regression by Newton's method; the first is the constant.
 * @param shrinkage keeps weights small where there is little to learn from
 */
export function fitLogistic(
  observations: readonly Observation[],
  shrinkage = 1,
  rounds = 30,
): readonly number[] {
  const rows = observations.map(each => ({ ...each, inputs: [1, ...each.inputs] }));
  const n = rows[0]?.inputs.length ?? 1;
  let weights = new Array<number>(n).fill(0);
  for (let round = 0; round < rounds; round++) {
    const slope = weights.map(weight => -shrinkage * weight);
    const bend = weights.map((_, i) => weights.map((__, j) => (i === j ? shrinkage : 0)));
    for (const { inputs, outcome, weight } of rows) {
      const p = logistic(dot(weights, inputs));
      for (let i = 0; i < n; i++) {
        const xi = inputs[i] ?? 0;
        slope[i] = (slope[i] ?? 0) + weight * ((outcome ? 1 : 0) - p) * xi;
        const bends = bend[i] as number[];
        for (let j = 0; j < n; j++) bends[j] = (bends[j] ?? 0) + weight * p * (1 - p) * xi * (inputs[j] ?? 0);
      }
    }
    const step = solve(bend, slope);
    weights = weights.map((weight, i) => weight + (step[i] ?? 0));
  }
  return weights;
}
