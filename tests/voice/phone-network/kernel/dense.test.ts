import { readFileSync } from 'node:fs';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { assembledKernel } from '../../../../acoustic-model/kernel.ts';
import { DenseMemory, type DenseWeights } from '../../../../src/voice/phone-network/kernel/dense.ts';

const numbers = (count: number) =>
  fc.float32Array({ minLength: count, maxLength: count, min: -100, max: 100, noNaN: true });

const matrices = fc
  .tuple(fc.integer({ min: 1, max: 21 }), fc.integer({ min: 1, max: 70 }))
  .chain(([rows, columns]) =>
    fc.record({
      rows: fc.constant(rows),
      columns: fc.constant(columns),
      values: fc.int8Array({ minLength: rows * columns, maxLength: rows * columns, min: -127, max: 127 }),
      steps: fc.float32Array({ minLength: rows, maxLength: rows, min: 0, max: 1, noNaN: true }),
      inputs: numbers(columns),
    }),
  );

/** The products by their definition, in floating point. */
const byDefinition = ({ rows, columns, values, steps }: DenseWeights, inputs: Float32Array) =>
  Array.from({ length: rows }, (_, row) => {
    let sum = 0;
    for (let i = 0; i < columns; i++) sum += (values[row * columns + i] ?? 0) * (inputs[i] ?? 0);
    return sum * (steps[row] ?? 0);
  });

describe('the kernel', () => {
  it('multiplies as the definition does, but for the rounding of its inputs', () => {
    fc.assert(
      fc.property(matrices, ({ inputs, ...matrix }) => {
        const outputs = new Float32Array(matrix.rows);
        new DenseMemory().add(matrix)(inputs, outputs);
        const largest = inputs.reduce((most, input) => Math.max(most, Math.abs(input)), 0);
        byDefinition(matrix, inputs).forEach((expected, row) => {
          // Half a step of each input, times the largest weight.
          const mostApart =
            (0.51 * (largest / 4_095) * 127 * matrix.columns + 1e-6) * (matrix.steps[row] ?? 0);
          expect(Math.abs((outputs[row] ?? Number.NaN) - expected)).toBeLessThanOrEqual(mostApart + 1e-4);
        });
      }),
    );
  });

  it('does not leave 32 bits with the largest numbers that there can be', () => {
    const [rows, columns] = [4, 4_096];
    const matrix = {
      rows,
      columns,
      values: new Int8Array(rows * columns).fill(127),
      steps: new Float32Array(rows).fill(1),
    };
    const outputs = new Float32Array(rows);
    new DenseMemory().add(matrix)(new Float32Array(columns).fill(1), outputs);
    for (const output of outputs) expect(output / (127 * columns)).toBeCloseTo(1, 6);
  });

  it('keeps matrices apart that share its memory', () => {
    const memory = new DenseMemory();
    const ofOnes = (rows: number, columns: number, value: number) =>
      memory.add({
        rows,
        columns,
        values: new Int8Array(rows * columns).fill(value),
        steps: new Float32Array(rows).fill(1),
      });
    const all = [ofOnes(300, 300, 1), ofOnes(5, 17, 2), ofOnes(300, 300, 3)];
    const [large, small] = [new Float32Array(300), new Float32Array(5)];
    all[0]?.(new Float32Array(300).fill(1), large);
    expect(large[299]).toBeCloseTo(300, 3);
    all[1]?.(new Float32Array(17).fill(1), small);
    expect([...small].map(Math.round)).toEqual([34, 34, 34, 34, 34]);
    all[2]?.(new Float32Array(300).fill(1), large);
    expect(large[0]).toBeCloseTo(900, 3);
  });

  it('refuses what is larger than its memory is laid out for', () => {
    const matrix = { rows: 4_097, columns: 1, values: new Int8Array(4_097), steps: new Float32Array(4_097) };
    expect(() => new DenseMemory().add(matrix)).toThrow('The matrix is too large.');
  });

  it('is what its text says, assembled', async () => {
    const file = new URL('../../../../src/voice/phone-network/kernel/bytes.ts', import.meta.url);
    expect(readFileSync(file, 'utf8')).toBe(await assembledKernel());
  });
});
