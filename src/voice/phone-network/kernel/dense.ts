import { kernelBase64 } from './bytes.ts';

/** 8-bit weights from some inputs to some outputs, a row for each output, with the value of one step of each row. */
export interface DenseWeights {
  readonly rows: number;
  readonly columns: number;
  readonly values: Int8Array;
  readonly steps: Float32Array;
}

/** Inputs are rounded to so many steps either way: the sums of 4096 products stay within 32 bits. */
const inputSteps = 4_095;
const rowsAtOnce = 4;
const columnsAtOnce = 16;
const pageBytes = 65_536;

const upTo = (count: number, whole: number) => Math.ceil(count / whole) * whole;

interface Kernel {
  readonly memory: WebAssembly.Memory;
  readonly dense: (weights: number, inputs: number, outputs: number, rows: number, columns: number) => void;
}

let compiled: WebAssembly.Module | undefined;

function instantiate(): Kernel {
  compiled ??= new WebAssembly.Module(Uint8Array.from(atob(kernelBase64), char => char.charCodeAt(0)));
  // The module's text is beside this file: these are its exports.
  return new WebAssembly.Instance(compiled).exports as unknown as Kernel;
}

/** Multiplies one matrix with one vector after the other. The result is good until the next call. */
export type Multiply = (inputs: Float32Array, outputs: Float32Array) => void;

/**
 * The matrices of a network in the memory of a kernel of its own (`dense.wat`): the work of a moment is nearly all here,
 * and plain TypeScript takes some eight times as long for it.
 */
export class DenseMemory {
  private readonly kernel = instantiate();
  /** Inputs and outputs lie before the weights. */
  private readonly inputsAt = 0;
  private readonly outputsAt = 4_096 * 2;
  private end = this.outputsAt + 4_096 * 4;

  /** @throws RangeError for more than 4096 rows or columns. */
  add({ rows, columns, values, steps }: DenseWeights): Multiply {
    const [allRows, allColumns] = [upTo(rows, rowsAtOnce), upTo(columns, columnsAtOnce)];
    if (allRows > 4_096 || allColumns > 4_096) throw new RangeError('The matrix is too large.');
    const at = this.end;
    this.end += allRows * allColumns;
    this.grow();
    const stored = new Int8Array(this.kernel.memory.buffer, at, allRows * allColumns);
    for (let row = 0; row < rows; row++) {
      stored.set(values.subarray(row * columns, (row + 1) * columns), row * allColumns);
    }
    return (inputs, outputs) => {
      const buffer = this.kernel.memory.buffer;
      const rounded = new Int16Array(buffer, this.inputsAt, allColumns);
      let [least, most] = [0, 0];
      for (let i = 0; i < columns; i++) {
        const input = inputs[i] as number;
        if (input > most) most = input;
        else if (input < least) least = input;
      }
      const largest = Math.max(most, -least);
      const perStep = largest > 0 ? inputSteps / largest : 0;
      // Rounds as Math.round does, in a third of the time: what is cut off is never negative.
      for (let i = 0; i < columns; i++) {
        rounded[i] = (((inputs[i] as number) * perStep + inputSteps + 0.5) | 0) - inputSteps;
      }
      rounded.fill(0, columns);
      this.kernel.dense(at, this.inputsAt, this.outputsAt, allRows, allColumns);
      const sums = new Int32Array(buffer, this.outputsAt, rows);
      const step = largest / inputSteps;
      for (let row = 0; row < rows; row++)
        outputs[row] = (sums[row] as number) * (steps[row] as number) * step;
    };
  }

  private grow(): void {
    const missing = this.end - this.kernel.memory.buffer.byteLength;
    if (missing > 0) this.kernel.memory.grow(Math.ceil(missing / pageBytes));
  }
}
