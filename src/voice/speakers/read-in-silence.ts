import type { Synthesizer } from '../ports.ts';

/** Spoken French and English are near fifteen letters a second (from memory). */
const MS_PER_LETTER = 1000 / 15;

/** Where nothing is to be heard: no sound is made, and every sentence takes as long as it would aloud. */
export const readInSilence: Synthesizer = {
  synthesize: async text => ({
    samples: new Float32Array(Math.round(MS_PER_LETTER * text.length)),
    sampleRateHz: 1000,
  }),
};
