/**
 * Power of each frequency of a real signal, bins 0 to length / 2, by a radix-2 fast Fourier transform.
 * @param length of the signal: a power of two
 */
export function createPowerSpectrum(length: number): (signal: Float32Array) => Float64Array {
  const bits = Math.log2(length);
  if (!Number.isInteger(bits)) throw new RangeError(`A length of ${length} is no power of two.`);
  const half = length / 2;
  const cos = Float64Array.from({ length: half }, (_, i) => Math.cos((2 * Math.PI * i) / length));
  const sin = Float64Array.from({ length: half }, (_, i) => Math.sin((2 * Math.PI * i) / length));
  const reversed = Uint32Array.from({ length }, (_, i) => {
    let turned = 0;
    for (let bit = 0; bit < bits; bit++) turned |= ((i >> bit) & 1) << (bits - 1 - bit);
    return turned;
  });
  const re = new Float64Array(length);
  const im = new Float64Array(length);
  const power = new Float64Array(half + 1);

  /** Joins two spectra of every other sample into one of twice the length. */
  function butterflies(size: number): void {
    const step = length / size;
    for (let start = 0; start < length; start += size) {
      for (let i = 0; i < size / 2; i++) {
        const [a, b] = [start + i, start + i + size / 2];
        const [c, s] = [cos[i * step] ?? 0, sin[i * step] ?? 0];
        const [bRe, bIm] = [re[b] ?? 0, im[b] ?? 0];
        const [turnedRe, turnedIm] = [bRe * c + bIm * s, bIm * c - bRe * s];
        const [aRe, aIm] = [re[a] ?? 0, im[a] ?? 0];
        re[b] = aRe - turnedRe;
        im[b] = aIm - turnedIm;
        re[a] = aRe + turnedRe;
        im[a] = aIm + turnedIm;
      }
    }
  }

  return signal => {
    for (let i = 0; i < length; i++) re[i] = signal[reversed[i] ?? 0] ?? 0;
    im.fill(0);
    for (let size = 2; size <= length; size *= 2) butterflies(size);
    for (let i = 0; i <= half; i++) power[i] = (re[i] ?? 0) ** 2 + (im[i] ?? 0) ** 2;
    return power;
  };
}
