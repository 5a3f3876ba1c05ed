import { z } from 'zod';
import { VoiceError } from '../errors.ts';
import type { DenseWeights } from './kernel/dense.ts';

/** The network's numbers by name: matrices in 8 bits, a step for each row, and rows of plain numbers. */
export interface Weights {
  /** Moments that each block of a phone network looks ahead, where the file says it. */
  readonly ahead: readonly number[] | undefined;
  /** @throws VoiceError `modelUnusable` when there is no such matrix, or not of that shape. */
  matrix(name: string, rows: number, columns: number): DenseWeights;
  /** @throws VoiceError `modelUnusable` when there is no such matrix. */
  rowsOf(name: string): number;
  /** @throws VoiceError `modelUnusable` when there is no such row, or not of that length. */
  row(name: string, length: number): Float32Array;
}

const phoneNetwork = 'first-fire phone network 2\n';

const headerSchema = z.strictObject({
  ahead: z.array(z.int().nonnegative().max(8)).optional(),
  tensors: z.array(
    z.discriminatedUnion('kind', [
      z.strictObject({
        kind: z.literal('matrix'),
        name: z.string(),
        rows: z.int().positive().max(4_096),
        columns: z.int().positive().max(4_096),
      }),
      z.strictObject({ kind: z.literal('row'), name: z.string(), length: z.int().positive().max(65_536) }),
    ]),
  ),
});

const damaged = (what: string, cause?: unknown) =>
  new VoiceError('modelUnusable', `The file of a network is damaged (${what}); install first-fire again.`, {
    cause,
  });

/**
 * Reads a network's file: a mark, which says whose it is, the length of a header (32 bits, little-endian), the header as JSON, and the numbers
 * in the header's order: of a matrix the step of each row (32-bit floating point) and then its 8-bit numbers, of a row
 * its 32-bit floating-point numbers.
 * @throws VoiceError `modelUnusable` when anything is missing, left over or out of place.
 */
export function readWeights(bytes: Uint8Array, mark: string = phoneNetwork): Weights {
  const { header, at } = readHeader(bytes, mark);
  const matrices = new Map<string, DenseWeights>();
  const rows = new Map<string, Float32Array>();
  const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);
  let offset = at;
  const take = (length: number) => {
    if (offset + length > bytes.length) throw damaged('it was cut short');
    offset += length;
    return offset - length;
  };
  const floats = (length: number) => {
    const from = take(4 * length);
    return Float32Array.from({ length }, (_, i) => view.getFloat32(from + 4 * i, true));
  };
  for (const tensor of header.tensors) {
    if (tensor.kind === 'row') rows.set(tensor.name, floats(tensor.length));
    else {
      const steps = floats(tensor.rows);
      const from = take(tensor.rows * tensor.columns);
      const values = new Int8Array(bytes.subarray(from, offset));
      matrices.set(tensor.name, { rows: tensor.rows, columns: tensor.columns, values, steps });
    }
  }
  if (offset !== bytes.length) throw damaged('it is longer than it says');
  return {
    ahead: header.ahead,
    matrix(name, rowCount, columns) {
      const found = matrices.get(name);
      if (found?.rows !== rowCount || found.columns !== columns) {
        throw damaged(`it has no "${name}" of ${rowCount} by ${columns}`);
      }
      return found;
    },
    rowsOf(name) {
      const found = matrices.get(name);
      if (found === undefined) throw damaged(`it has no "${name}"`);
      return found.rows;
    },
    row(name, length) {
      const found = rows.get(name);
      if (found?.length !== length) throw damaged(`it has no "${name}" of ${length}`);
      return found;
    },
  };
}

function readHeader(
  bytes: Uint8Array,
  mark: string,
): {
  readonly header: z.infer<typeof headerSchema>;
  readonly at: number;
} {
  if (new TextDecoder().decode(bytes.subarray(0, mark.length)) !== mark) throw damaged('it begins otherwise');
  const from = mark.length + 4;
  if (bytes.length < from) throw damaged('it was cut short');
  const length = new DataView(bytes.buffer, bytes.byteOffset).getUint32(mark.length, true);
  const at = from + length;
  if (at > bytes.length) throw damaged('it was cut short');
  try {
    return { header: headerSchema.parse(JSON.parse(new TextDecoder().decode(bytes.subarray(from, at)))), at };
  } catch (cause) {
    throw damaged('its header cannot be read', cause);
  }
}
