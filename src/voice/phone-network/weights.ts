import { z } from 'zod';
import { VoiceError } from '../errors.ts';

/** Numbers of any shape, the last index fastest. */
export interface Tensor {
  readonly shape: readonly number[];
  readonly values: Float32Array;
}

export type Weights = ReadonlyMap<string, Tensor>;

const mark = 'first-fire phone network 1\n';

const headerSchema = z.strictObject({
  tensors: z.array(
    z.strictObject({
      name: z.string(),
      shape: z.array(z.int().positive().max(10_000)).min(1).max(4),
      /** Value of one step of the 16-bit numbers. */
      step: z.number().positive(),
    }),
  ),
});

const damaged = (what: string, cause?: unknown) =>
  new VoiceError(
    'modelUnusable',
    `The file of the phone network is damaged (${what}); install first-fire again.`,
    { cause },
  );

/**
 * Reads the network's file: a mark, the length of a header (32 bits, little-endian), the header as JSON, and the
 * tensors' 16-bit numbers in the header's order.
 * @throws VoiceError `modelUnusable` when anything is missing, left over or out of place.
 */
export function readWeights(bytes: Uint8Array): Weights {
  const { header, at } = readHeader(bytes);
  const weights = new Map<string, Tensor>();
  const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);
  let offset = at;
  for (const { name, shape, step } of header.tensors) {
    const length = shape.reduce((product, side) => product * side, 1);
    if (offset + 2 * length > bytes.length) throw damaged('it was cut short');
    const from = offset;
    weights.set(name, {
      shape,
      values: Float32Array.from({ length }, (_, i) => view.getInt16(from + 2 * i, true) * step),
    });
    offset += 2 * length;
  }
  if (offset !== bytes.length) throw damaged('it is longer than it says');
  return weights;
}

function readHeader(bytes: Uint8Array): {
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

/** @throws VoiceError `modelUnusable` when there is no such tensor, or not of that shape. */
export function tensorOf(weights: Weights, name: string, shape: readonly number[]): Tensor {
  const tensor = weights.get(name);
  if (tensor === undefined || tensor.shape.join() !== shape.join()) {
    throw damaged(`it has no "${name}" of ${shape.join(' by ')}`);
  }
  return tensor;
}
