/** Below this a level is not told apart from digital silence. */
export const silentDbfs = -96;

/** Root mean square of the samples, dB relative to full scale; `silentDbfs` for silence or no samples. */
export function levelDbfs(samples: Float32Array): number {
  let squares = 0;
  for (const sample of samples) squares += sample * sample;
  const rms = Math.sqrt(squares / Math.max(samples.length, 1));
  return Math.max(silentDbfs, 20 * Math.log10(rms || 1e-9));
}

/** Whether the converter ran out of range: several samples at its very edge. */
export function isClipping(samples: Float32Array): boolean {
  let atEdge = 0;
  for (const sample of samples) if (Math.abs(sample) >= 0.999) atEdge++;
  return atEdge >= 3;
}
