type SampleReader = (data: DataView, at: number) => number;

const limit = (level: number): number => (Number.isFinite(level) ? Math.max(-1, Math.min(1, level)) : 0);

const int24 = (data: DataView, at: number): number =>
  data.getUint8(at) | (data.getUint8(at + 1) << 8) | (data.getInt8(at + 2) << 16);

const pcmReaders: Readonly<Record<number, SampleReader>> = {
  8: (data, at) => (data.getUint8(at) - 128) / 128,
  16: (data, at) => data.getInt16(at, true) / 32_768,
  24: (data, at) => int24(data, at) / 8_388_608,
  32: (data, at) => data.getInt32(at, true) / 2_147_483_648,
};

/**
 * How one sample of a WAV file is read as -1 to 1: unsigned for 8 bits, signed for 16, 24 and 32, and float,
 * where anything louder is limited and what is not finite is silence.
 * @param bitsPerSample 8, 16, 24 or 32.
 */
export function sampleReader(bitsPerSample: number, float: boolean): SampleReader {
  if (float) return (data, at) => limit(data.getFloat32(at, true));
  const reader = pcmReaders[bitsPerSample];
  if (!reader) throw new RangeError(`no reader for ${bitsPerSample} bits`);
  return reader;
}
