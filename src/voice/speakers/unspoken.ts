import type { Synthesizer } from '../ports.ts';

/** People speak about so fast. */
const MS_PER_LETTER = 60;
const RATE_HZ = 16_000;

/** Silence as long as the words would take: for runs that keep the timing of speech without any. */
export const unspoken: Synthesizer = {
  synthesize: async text => ({
    samples: new Float32Array((RATE_HZ / 1000) * MS_PER_LETTER * text.length),
    sampleRateHz: RATE_HZ,
  }),
};
