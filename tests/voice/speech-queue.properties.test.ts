import fc from 'fast-check';
import { expect, it } from 'vitest';
import { type Sentence, type SpeechOutcome, SpeechQueue } from '../../src/voice/speech-queue.ts';
import { ScriptedSink } from '../helpers/scripted-sink.ts';
import { tone } from '../helpers/tones.ts';

const settle = () => new Promise(resolve => setImmediate(resolve));

type Step = Sentence['priority'] | 'finish' | 'clear' | 'settle' | 'aSecond';
const step = fc.oneof(
  { weight: 3, arbitrary: fc.constantFrom<Step>('hazard', 'prompt', 'notice') },
  { weight: 4, arbitrary: fc.constantFrom<Step>('finish', 'settle') },
  { weight: 1, arbitrary: fc.constantFrom<Step>('clear', 'aSecond') },
);

interface Said {
  readonly sentence: Sentence;
  outcome?: SpeechOutcome;
}

/** Runs the steps, then lets everything be said that is left. */
async function run(steps: readonly Step[]) {
  const sink = new ScriptedSink();
  const said: Said[] = [];
  const faults: string[] = [];
  let timeMs = 0;
  let speaking: Sentence | undefined;
  const queue = new SpeechQueue({ synthesize: async () => tone(0.01) }, sink, () => timeMs);
  queue.onSpeaking(sentence => {
    if ((sentence === undefined) === (speaking === undefined)) faults.push('speech began or ended twice');
    speaking = sentence;
  });
  sink.onPlay = label => {
    if (speaking?.text !== label) faults.push(`${label} was played unannounced`);
    const hazardWaits = said.some(({ sentence, outcome }) => sentence.priority === 'hazard' && !outcome);
    if (hazardWaits && !label.startsWith('hazard')) faults.push(`${label} was played before a hazard`);
  };
  for (const [i, step] of steps.entries()) {
    if (step === 'finish') sink.finish();
    else if (step === 'settle') await settle();
    else if (step === 'clear') queue.clear();
    else if (step === 'aSecond') timeMs += 4_000;
    else {
      const entry: Said = { sentence: { text: `${step} ${i}`, priority: step } };
      said.push(entry);
      void queue.enqueue(entry.sentence).then(outcome => {
        entry.outcome = outcome;
      });
    }
  }
  for (let i = 0; i <= 2 * steps.length; i++) {
    await settle();
    sink.finish();
  }
  await settle();
  const endsOf = ({ sentence }: Said) =>
    sink.played.filter(({ label }) => label === sentence.text).map(({ end }) => end);
  return { sink, said, faults, endsOf, speaking };
}

it('whatever comes in whatever order: one voice, hazards first and twice, every promise kept', async () => {
  await fc.assert(
    fc.asyncProperty(fc.array(step, { maxLength: 40 }), async steps => {
      const { sink, said, faults, endsOf, speaking } = await run(steps);
      expect(faults).toEqual([]);
      expect(sink.overlaps).toEqual([]);
      expect(speaking).toBeUndefined();
      for (const entry of said) {
        const { sentence, outcome } = entry;
        if (sentence.priority === 'hazard') {
          expect(outcome).toEqual({ kind: 'spoken' });
          expect(endsOf(entry)).toEqual(['whole', 'whole']);
        } else if (outcome?.kind === 'spoken') expect(endsOf(entry)).toEqual(['whole']);
        else if (outcome?.kind === 'stale')
          expect([sentence.priority, endsOf(entry)]).toEqual(['notice', []]);
        else {
          expect(outcome).toEqual({ kind: 'cut' });
          expect(endsOf(entry).length).toBeLessThanOrEqual(1);
        }
      }
    }),
    { numRuns: 400 },
  );
});

it('sentences of one weight are said in the order they came, and the two sayings of a hazard in a row', async () => {
  await fc.assert(
    fc.asyncProperty(fc.array(step, { maxLength: 40 }), async steps => {
      const { sink, said } = await run(steps);
      for (const priority of ['hazard', 'prompt', 'notice']) {
        const labels = sink.played.map(({ label }) => label).filter(label => label.startsWith(priority));
        const places = labels.map(label => said.findIndex(({ sentence }) => sentence.text === label));
        expect(places).toEqual([...places].sort((a, b) => a - b));
      }
      const hazardAt = sink.played.flatMap(({ label }, i) => (label.startsWith('hazard') ? [i] : []));
      for (let i = 0; i < hazardAt.length; i += 2)
        expect((hazardAt[i + 1] ?? 0) - (hazardAt[i] ?? 0)).toBe(1);
    }),
    { numRuns: 200 },
  );
});
