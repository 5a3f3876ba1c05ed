/**
 * 16 bit little-endian samples, as sound devices and WAV files take them. Samples outside -1 to 1 are limited
 * to it; one that is not a number is silence.
 */
export function toS16le(samples: Float32Array): Uint8Array {
  const view = new DataView(new ArrayBuffer(samples.length * 2));
  samples.forEach((sample, i) => {
    const level = Number.isNaN(sample) ? 0 : Math.round(sample * 32_768);
    view.setInt16(i * 2, Math.max(-32_768, Math.min(32_767, level)), true);
  });
  return new Uint8Array(view.buffer);
}

/** The other way: whole samples only; a last odd byte is left out. */
export function fromS16le(bytes: Uint8Array): Float32Array {
  const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);
  const samples = new Float32Array(bytes.byteLength >> 1);
  for (let i = 0; i < samples.length; i++) samples[i] = view.getInt16(i * 2, true) / 32_768;
  return samples;
}
