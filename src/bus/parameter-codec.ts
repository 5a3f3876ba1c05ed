import type { ParameterDefinition } from './parameters.ts';

/** Absent, faulty and good are kept apart; none of them is ever a number in the place of another. */
export type RawKind = 'value' | 'notAvailable' | 'error' | 'parameterSpecific';

/**
 * Reads the raw number of a parameter, or -1 when the message is too short to hold it.
 * Valid for 2 to 32 bits that do not cross a byte unless they begin at bit 1.
 */
export function readRaw({ startByte, startBit, bits }: ParameterDefinition, data: Uint8Array): number {
  const first = startByte - 1;
  if (bits < 8) {
    const byte = data[first];
    return byte === undefined ? -1 : (byte >>> (startBit - 1)) & ((1 << bits) - 1);
  }
  const last = first + (bits >>> 3) - 1;
  if (last >= data.length) return -1;
  let raw = 0;
  for (let at = last; at >= first; at -= 1) raw = raw * 256 + (data[at] ?? 0);
  return raw;
}

/**
 * What a raw number means by its range: SAE J1939-71 table 1 (from memory). Of whole bytes the highest one says it:
 * to 0xFA a value, 0xFB parameter specific, 0xFC to 0xFE error or reserved, 0xFF not available. Of fewer bits the
 * highest number is not available and the one below it error. A reserved number counts as an error: it is no value.
 */
export function kindOf({ bits, largestRaw }: ParameterDefinition, raw: number): RawKind {
  if (raw < 0) return 'notAvailable';
  if (bits < 8) {
    const notAvailable = (1 << bits) - 1;
    if (raw === notAvailable) return 'notAvailable';
    return raw > (largestRaw ?? notAvailable - 2) ? 'error' : 'value';
  }
  const highest = Math.floor(raw / 2 ** (bits - 8));
  if (highest <= 0xfa) return 'value';
  if (highest === 0xfb) return 'parameterSpecific';
  return highest === 0xff ? 'notAvailable' : 'error';
}

/** Smallest and largest value that the parameter can show, in its unit. */
export function rangeOf(definition: ParameterDefinition): { readonly min: number; readonly max: number } {
  const { bits, scale, offset, largestRaw } = definition;
  const widest = bits < 8 ? (1 << bits) - 3 : 0xfb * 2 ** (bits - 8) - 1;
  return { min: offset, max: (largestRaw ?? widest) * scale + offset };
}

/** What to write: a value in the parameter's unit, or that there is none. */
export type ParameterContent = number | 'notAvailable' | 'error';

/**
 * Writes a parameter into a message, to the nearest step it can show.
 * @throws RangeError when the value is outside what the parameter can show, or the message is too short
 */
export function writeParameter(
  definition: ParameterDefinition,
  content: ParameterContent,
  data: Uint8Array,
): void {
  const { spn, startByte, startBit, bits } = definition;
  const first = startByte - 1;
  if (first + Math.max(1, bits >>> 3) > data.length)
    throw new RangeError(`SPN ${spn} does not fit a message of ${data.length} bytes.`);
  const raw = rawOf(definition, content);
  if (bits < 8) {
    const mask = ((1 << bits) - 1) << (startBit - 1);
    data[first] = ((data[first] ?? 0) & ~mask) | (raw << (startBit - 1));
    return;
  }
  for (let index = 0; index < bits >>> 3; index += 1)
    data[first + index] = Math.floor(raw / 256 ** index) % 256;
}

function rawOf(definition: ParameterDefinition, content: ParameterContent): number {
  const { spn, bits, scale, offset, unit } = definition;
  const all = 2 ** bits - 1;
  if (content === 'notAvailable') return all;
  if (content === 'error') return bits < 8 ? all - 1 : all - 2 ** (bits - 8);
  const { min, max } = rangeOf(definition);
  if (!(content >= min && content <= max))
    throw new RangeError(`SPN ${spn} cannot show ${content} ${unit}; it goes from ${min} to ${max}.`);
  return Math.round((content - offset) / scale);
}
