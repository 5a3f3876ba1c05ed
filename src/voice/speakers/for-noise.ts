/** Takes the boom out of a voice, which only eats up the loudspeaker's level: share of the sample before. */
const HIGH_PASS = 0.7;
/** How far the loud sounds are pressed down to make room for the soft ones. */
const DRIVE = 3;
/** As loud as 16 bits allow without clipping. */
const PEAK = 0.98;

/**
 * Shapes speech to be understood beside an engine at the loudness the loudspeaker has: low tones lowered, then
 * soft sounds brought up to the loud ones. The price is a harder voice in a quiet room.
 * Method: high-pass filter, then rapid amplitude compression; Niederjohn and Grotelueschen, IEEE Transactions on
 * Acoustics, Speech and Signal Processing 24 (1976) (from memory). The two figures are our own choice, from one small
 * trial (16 sentences, one voice, engine-like noise 20 dB under full scale): a recognizer's word errors fell from
 * 63 to 37 %, and without noise rose from 10 to 24 %. Not tried on people.
 * @param samples -1 to 1, finite. Silence stays silence.
 */
export function shapeForNoise(samples: Float32Array): Float32Array {
  const bright = samples.map((sample, i) => sample - HIGH_PASS * (samples[i - 1] ?? 0));
  const peak = bright.reduce((highest, sample) => Math.max(highest, Math.abs(sample)), 0);
  if (peak === 0) return bright;
  return bright.map(sample => (PEAK * Math.tanh((DRIVE * sample) / peak)) / Math.tanh(DRIVE));
}
