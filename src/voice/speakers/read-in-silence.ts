import type { Synthesizer } from '../ports.ts';

/** As long as people need for a character; common practice, no published source. */
const MS_PER_CHARACTER = 55;

/** Where nothing is to be heard: no sound is made, and every sentence takes the time that reading it takes. */
export const readInSilence: Synthesizer = {
  synthesize: async text => ({
    samples: new Float32Array(MS_PER_CHARACTER * text.length),
    sampleRateHz: 1000,
  }),
};
