import type { Pcm, Synthesizer } from '../ports.ts';

const RATE_HZ = 16_000;
/** Spoken French and English are near fifteen letters a second (from memory). */
const SAMPLES_PER_LETTER = RATE_HZ / 15;

/** No voice: silence for as long as the sentence takes to be read, so that a session keeps its timing. */
export class ReadingPace implements Synthesizer {
  async synthesize(text: string): Promise<Pcm> {
    return {
      samples: new Float32Array(Math.round(SAMPLES_PER_LETTER * text.length)),
      sampleRateHz: RATE_HZ,
    };
  }
}
