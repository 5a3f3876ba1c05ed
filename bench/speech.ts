import { CachedSynthesizer } from '../src/voice/speakers/cached-synthesizer.ts';
import { FliteSynthesizer } from '../src/voice/speakers/flite.ts';

const SENTENCES = [
  'Danger. Stop the engine.',
  'Oil pressure thirty five. Is that right?',
  'Second person: look for leaks with paper, never with a hand.',
];
const RUNS = 5;

async function timed(action: () => Promise<unknown>): Promise<number> {
  const startMs = performance.now();
  await action();
  return performance.now() - startMs;
}

/** How long the first sentence takes with its start-up, and each sentence afterwards, made anew and repeated. */
export async function benchSpeech(): Promise<void> {
  const flite = new FliteSynthesizer();
  const cached = new CachedSynthesizer(flite);
  console.log('Speech, milliseconds until the sound is there');
  console.log(
    `  first sentence, thread and module loaded: ${(await timed(() => flite.synthesize('Go.'))).toFixed(0)}`,
  );
  for (const sentence of SENTENCES) {
    const runsMs: number[] = [];
    for (let run = 0; run < RUNS; run++) runsMs.push(await timed(() => flite.synthesize(sentence)));
    const { samples, sampleRateHz } = await cached.synthesize(sentence);
    const repeatMs = await timed(() => cached.synthesize(sentence));
    runsMs.sort((a, b) => a - b);
    const [least, median, most] = [0, RUNS >> 1, RUNS - 1].map(i => runsMs[i]?.toFixed(0));
    console.log(`  "${sentence}" (${(samples.length / sampleRateHz).toFixed(1)} s of sound)`);
    console.log(
      `    made anew: median ${median}, least ${least}, most ${most}; repeated: ${repeatMs.toFixed(2)}`,
    );
  }
  flite.close();
}
