import { synthesize } from '../audio-fixtures/synthesize.ts';
import { createEmbeddedRecognizer } from '../src/voice/recognizers/embedded.ts';
import { procedureReplies } from './procedure-replies.ts';
import { count, outcomeOf } from './voice.ts';
import { emptyTally, listenTo, quantile, speechEndMs, totalOf } from './voice-measure.ts';

/** A microphone is never digitally silent: the noise floor is learned from this before the first word. */
const beforeSpeech = {
  samples: Float32Array.from({ length: 8_000 }, (_, i) => (((i * 7_919) % 13) - 6) / 200_000),
  sampleRateHz: 16_000,
};

/** One in so many of the replies: the questions of a phase stand side by side and are alike. */
const STRIDE = 4;

/** How the replies of the real procedure are heard, each in the state that takes it, and how soon. */
export async function benchProcedureHearing(voices = ['flite-slt', 'flite-rms']): Promise<void> {
  const asked = (await procedureReplies()).filter((_, i) => i % STRIDE === 0);
  const ear = await createEmbeddedRecognizer();
  const tally = emptyTally();
  const latencyMs: number[] = [];
  const spent = { cpuMs: 0, soundMs: 0 };
  for (const voice of voices) {
    for (const { grammar, says, means } of asked) {
      ear.listen(grammar);
      await ear.hear(beforeSpeech);
      const sound = synthesize(voice, says);
      const listening = await listenTo(ear, sound);
      spent.cpuMs += listening.cpuMs;
      spent.soundMs += listening.soundMs;
      count(tally, means, outcomeOf(listening));
      const last = listening.reports.at(-1);
      if (last) latencyMs.push(last.atMs - speechEndMs(sound));
    }
  }
  ear.close();
  console.log(`  exact ${tally.right} of ${totalOf(tally)}, ${tally.unclear} unclear, ${tally.wrong} wrong`);
  console.log(`  processor time per second of sound ${(spent.cpuMs / spent.soundMs).toFixed(3)} s`);
  const [median, p95] = [0.5, 0.95].map(share => quantile(latencyMs, share).toFixed(0));
  console.log(`  end of speech to reply: median ${median}, p95 ${p95} ms (${latencyMs.length})`);
}
