import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { convolution } from '../../../src/voice/phone-network/layers.ts';
import type { Tensor } from '../../../src/voice/phone-network/weights.ts';

const numbers = (count: number) =>
  fc.float32Array({ minLength: count, maxLength: count, min: -1, max: 1, noNaN: true });
const size = (shape: readonly number[]) => shape.reduce((product, side) => product * side, 1);
const tensor = (...shape: number[]) => numbers(size(shape)).map((values): Tensor => ({ shape, values }));

describe('a convolution that is fed row by row', () => {
  it('looks back over moments that lie apart, finds nothing before the first, and gives every second row', () => {
    const rows = fc.array(numbers(3), { minLength: 1, maxLength: 9 });
    const dilations = fc.integer({ min: 1, max: 3 });
    const strides = fc.integer({ min: 1, max: 2 });
    fc.assert(
      fc.property(
        tensor(3, 5, 3),
        tensor(5),
        rows,
        dilations,
        strides,
        (kernel, bias, fed, dilation, stride) => {
          const layer = convolution(kernel, bias, dilation, stride);
          fed.map(layer).forEach((result, at) => {
            if (at % stride !== 0) {
              expect(result).toBeUndefined();
              return;
            }
            for (let o = 0; o < 5; o++) {
              let sum = bias.values[o] ?? 0;
              for (let t = 0; t < 3; t++) {
                const past = fed[at - (2 - t) * dilation];
                for (let i = 0; i < 3; i++)
                  sum += (kernel.values[(t * 5 + o) * 3 + i] ?? 0) * (past?.[i] ?? 0);
              }
              expect(result?.[o]).toBeCloseTo(sum, 4);
            }
          });
        },
      ),
    );
  });
});
