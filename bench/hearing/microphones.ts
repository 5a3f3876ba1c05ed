import { normal } from '../../audio-fixtures/random.ts';
import { speechRateHz } from '../../src/voice/resample.ts';
import { chain, highPass, lowPass } from './filters.ts';

export const microphoneKinds = ['good', 'bandLimited', 'clipped', 'reverberant'] as const;
export type MicrophoneKind = (typeof microphoneKinds)[number];

const reverberationS = 0.4;
/** How loud the room is against the direct sound. */
const roomShare = 0.35;

/** A room of bare walls: an answer that dies away by 60 dB in 0.4 s, the first of it from 8 ms on. */
function reverberant(sound: Float32Array): Float32Array {
  const gauss = normal(5);
  const tail = Float32Array.from({ length: reverberationS * speechRateHz }, (_, i) =>
    i < 0.008 * speechRateHz ? 0 : gauss() * 10 ** ((-3 * i) / (reverberationS * speechRateHz)),
  );
  const energy = Math.sqrt(tail.reduce((sum, tap) => sum + tap * tap, 0));
  // One tap in eight: sparse, as early reflections are, and cheap.
  const taps = [...tail.entries()].filter(([i]) => i % 8 === 0);
  const heard = Float32Array.from(sound);
  for (const [delay, tap] of taps) {
    const gain = (roomShare * Math.sqrt(8) * tap) / energy;
    for (let i = delay; i < sound.length; i++) heard[i] = (heard[i] ?? 0) + gain * (sound[i - delay] ?? 0);
  }
  return heard;
}

/** The sound as a microphone of a kind delivers it. */
export function through(kind: MicrophoneKind, sound: Float32Array): Float32Array {
  switch (kind) {
    case 'good':
      return sound;
    case 'bandLimited': {
      // A telephone headset: 300 to 3400 Hz.
      const narrow = chain(highPass(300), highPass(300), lowPass(3_400), lowPass(3_400));
      return sound.map(narrow);
    }
    case 'clipped':
      // So loud that the peaks of the voice are cut off at the converter's edge.
      return sound.map(sample => Math.max(-1, Math.min(1, sample * 12)));
    case 'reverberant':
      return reverberant(sound);
  }
}
