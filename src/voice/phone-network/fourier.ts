/**
 * Power of each frequency of a real signal, bins 0 to length / 2: a radix-2 fast Fourier transform of half the length,
 * of which the even samples are the real part and the odd ones the imaginary part (Press et al., Numerical Recipes, 2nd
 * ed., 12.3, from memory). What is given is good until the next call.
 * @param length of the signal: a power of two, 4 or more
 */
export function createPowerSpectrum(length: number): (signal: Float32Array) => Float64Array {
  if (length < 4 || !Number.isInteger(Math.log2(length))) {
    throw new RangeError(`A length of ${length} is no power of two from 4 on.`);
  }
  const half = length / 2;
  const bits = Math.log2(half);
  const cos = Float64Array.from({ length: half }, (_, i) => Math.cos((2 * Math.PI * i) / length));
  const sin = Float64Array.from({ length: half }, (_, i) => Math.sin((2 * Math.PI * i) / length));
  const reversed = Uint32Array.from({ length: half }, (_, i) => {
    let turned = 0;
    for (let bit = 0; bit < bits; bit++) turned |= ((i >> bit) & 1) << (bits - 1 - bit);
    return turned;
  });
  const re = new Float64Array(half);
  const im = new Float64Array(half);
  const power = new Float64Array(half + 1);

  /** Joins two spectra of every other number into one of twice the length. */
  function join(size: number): void {
    const step = length / size;
    const distance = size / 2;
    for (let start = 0; start < half; start += size) {
      for (let i = 0, turn = 0; i < distance; i++, turn += step) {
        const a = start + i;
        const b = a + distance;
        const c = cos[turn] as number;
        const s = sin[turn] as number;
        const bRe = re[b] as number;
        const bIm = im[b] as number;
        const turnedRe = bRe * c + bIm * s;
        const turnedIm = bIm * c - bRe * s;
        const aRe = re[a] as number;
        const aIm = im[a] as number;
        re[b] = aRe - turnedRe;
        im[b] = aIm - turnedIm;
        re[a] = aRe + turnedRe;
        im[a] = aIm + turnedIm;
      }
    }
  }

  return signal => {
    for (let i = 0; i < half; i++) {
      const from = 2 * (reversed[i] as number);
      re[i] = signal[from] as number;
      im[i] = signal[from + 1] as number;
    }
    for (let size = 2; size <= half; size *= 2) join(size);
    power[0] = ((re[0] as number) + (im[0] as number)) ** 2;
    power[half] = ((re[0] as number) - (im[0] as number)) ** 2;
    for (let k = 1; k < half; k++) {
      const mirror = half - k;
      const evenRe = ((re[k] as number) + (re[mirror] as number)) / 2;
      const evenIm = ((im[k] as number) - (im[mirror] as number)) / 2;
      const oddRe = ((im[k] as number) + (im[mirror] as number)) / 2;
      const oddIm = ((re[mirror] as number) - (re[k] as number)) / 2;
      const c = cos[k] as number;
      const s = sin[k] as number;
      power[k] = (evenRe + oddRe * c + oddIm * s) ** 2 + (evenIm + oddIm * c - oddRe * s) ** 2;
    }
    return power;
  };
}
