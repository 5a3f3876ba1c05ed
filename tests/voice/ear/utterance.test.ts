import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { concatenate } from '../../../src/voice/concatenate.ts';
import type { Outlook } from '../../../src/voice/ear/decoder.ts';
import { longestUtteranceMs } from '../../../src/voice/ear/patience.ts';
import type { Grammar } from '../../../src/voice/ports.ts';
import { grammar, part, rig, scriptedDecoder, yes } from './rig.ts';

const quiet = (ms: number) => part('quiet', ms);
const near = (ms: number) => part('near', ms);
const doubt = (ms: number) => part('doubt', ms);

/** Plays a stream and says for each utterance how much sound it had, and when it was reported. */
async function utterancesIn(outlook: Outlook, ...stream: readonly Float32Array[]) {
  const { decoder, given } = scriptedDecoder({ outlook: () => outlook });
  const { play, reports } = rig(decoder);
  await play(...stream);
  return { given, endsMs: reports.map(({ atMs }) => atMs), heard: reports.map(({ heard }) => heard) };
}

describe('an utterance', () => {
  it('begins with two moments of near speech, and not with one, nor with any number of doubtful ones', async () => {
    expect((await utterancesIn('complete', quiet(600), near(60), quiet(600))).given).toHaveLength(1);
    expect((await utterancesIn('complete', quiet(600), near(30), quiet(600))).given).toHaveLength(0);
    expect((await utterancesIn('complete', quiet(600), doubt(1200), quiet(600))).given).toHaveLength(0);
  });

  it.each<[Outlook, number]>([
    ['complete', 160],
    ['extensible', 260],
    ['unfinished', 460],
    ['figures', 900],
  ])('that is %s ends after %d ms of silence, to within a moment', async (outlook, ms) => {
    const { endsMs } = await utterancesIn(outlook, quiet(600), near(600), quiet(1200));
    expect(endsMs).toHaveLength(1);
    expect(endsMs[0]).toBeGreaterThanOrEqual(1200 + ms);
    expect(endsMs[0]).toBeLessThanOrEqual(1200 + ms + 40);
  });

  it('goes on through a shorter gap, and while it is in doubt whether somebody speaks', async () => {
    const { endsMs } = await utterancesIn(
      'extensible',
      quiet(600),
      near(300),
      quiet(210),
      near(300),
      quiet(900),
    );
    expect(endsMs).toHaveLength(1);
    const doubtful = await utterancesIn('extensible', quiet(600), near(300), doubt(900), quiet(900));
    expect(doubtful.endsMs[0]).toBeGreaterThanOrEqual(600 + 1200 + 260);
  });

  it('ends where no phone has been heard for as long as nobody holds a vowel, however near the noise may seem', async () => {
    const { decoder } = scriptedDecoder({
      outlook: () => 'complete',
      verdict: nth => (nth === 1 ? yes : { kind: 'nothing' }),
    });
    const { play, reports } = rig(decoder);
    await play(quiet(600), near(600), part('hum', 2_000));
    expect(reports).toHaveLength(1);
    expect(reports[0]?.atMs).toBeGreaterThanOrEqual(1200 + 300 + 100);
    expect(reports[0]?.atMs).toBeLessThanOrEqual(1200 + 300 + 200);
    const held = await utterancesIn(
      'complete',
      quiet(600),
      near(300),
      part('hum', 240),
      near(300),
      quiet(600),
    );
    expect(held.endsMs).toHaveLength(1);
  });

  it('is over at once where all of it is known, and not while some of it is still to come', async () => {
    for (const [settled, ms] of [
      [true, 60],
      [false, 360],
    ] as const) {
      const { decoder } = scriptedDecoder({ outlook: () => 'complete', settled: () => settled });
      const { play, reports } = rig(decoder);
      await play(quiet(600), near(600), quiet(1200));
      expect(reports[0]?.atMs).toBeGreaterThanOrEqual(1200 + ms);
      expect(reports[0]?.atMs).toBeLessThanOrEqual(1200 + ms + 40);
    }
  });

  it('is over when the decoder says so, however near somebody still seems', async () => {
    const { decoder } = scriptedDecoder({ outlook: () => 'complete', over: nth => nth === 1 });
    const { play, reports } = rig(decoder);
    await play(quiet(600), near(300), part('hum', 300));
    expect(reports).toHaveLength(1);
    expect(reports[0]?.atMs).toBeLessThanOrEqual(900);
  });

  it('is given more time for everybody who asks for it, however it may go on', async () => {
    const { decoder } = scriptedDecoder({ outlook: () => 'complete' });
    const patient = rig(decoder, { trailingSilenceMs: 400 });
    await patient.play(quiet(600), near(600), quiet(280));
    expect(patient.reports).toEqual([]);
    await patient.play(quiet(120));
    expect(patient.reports).toHaveLength(1);
  });

  it('is cut off when it is too long, as unclear, and the next begins where it was cut', async () => {
    const { given, heard, endsMs } = await utterancesIn('unfinished', quiet(600), near(9_000), quiet(900));
    expect(given).toHaveLength(2);
    expect(heard[0]).toEqual({ kind: 'unclear', text: '', reason: 'tooLong' });
    expect(endsMs[0]).toBeLessThanOrEqual(600 + longestUtteranceMs + 40);
  });

  it('is whole: all sound from a little before it to its end is handed on in order, once', async () => {
    const lengths = fc.array(fc.tuple(fc.constantFrom(quiet, near, doubt), fc.integer({ min: 1, max: 20 })), {
      maxLength: 8,
    });
    await fc.assert(
      fc.asyncProperty(lengths, async parts => {
        const stream = concatenate([
          quiet(600),
          ...parts.map(([kind, n]) => kind(30 * n)),
          near(300),
          quiet(900),
        ]);
        // Each sample carries its place too, too faint to change what is heard.
        const marked = stream.map((value, i) => value + ((i % 320) + 1) * 1e-6);
        const { decoder, given } = scriptedDecoder();
        const { play } = rig(decoder);
        await play(marked);
        for (const { sound } of given) {
          const [first] = sound;
          const whole = concatenate(sound);
          const from = marked.findIndex(
            (_, i) => i % 320 === 0 && marked.slice(i, i + whole.length).every((v, k) => v === whole[k]),
          );
          expect(first?.length).toBe(320);
          expect(from).toBeGreaterThanOrEqual(0);
        }
        expect(given.length).toBeGreaterThan(0);
      }),
      { numRuns: 20 },
    );
  });

  it('is reported once, with what the decoder makes of it', async () => {
    const { heard } = await utterancesIn('complete', quiet(600), near(600), quiet(600));
    expect(heard).toEqual([{ kind: 'reply', id: 'yes', text: 'correct', confidence: 0.9 }]);
  });

  it('that was nothing gives its end to the next: somebody may just have begun', async () => {
    const { decoder, given } = scriptedDecoder({
      outlook: () => 'complete',
      verdict: nth => (nth === 1 ? { kind: 'nothing' } : yes),
    });
    const { play } = rig(decoder);
    await play(quiet(600), near(60), quiet(210), near(60), quiet(60));
    expect(given.map(({ sound }) => sound.length)).toEqual([expect.any(Number), expect.any(Number)]);
    // All that an utterance takes with it: 420 ms, and what has been heard of it since.
    expect(given[1]?.sound.length).toBeGreaterThanOrEqual(21);
  });

  it('of somebody far away gives its end to the next, as one that was nothing does', async () => {
    const { decoder, given } = scriptedDecoder({
      outlook: () => 'complete',
      verdict: nth => (nth === 1 ? { kind: 'unclear', text: 'correct', reason: 'farAway' } : yes),
    });
    const { play } = rig(decoder);
    await play(quiet(600), near(60), quiet(210), near(60), quiet(60));
    expect(given[1]?.sound.length).toBeGreaterThanOrEqual(21);
  });

  it('counts though the decoder broke down before it in the midst of a long block', async () => {
    const broken = [new Error('broken')];
    const wait = async () => {
      for (const error of broken.splice(0)) throw error;
    };
    const { ear, play, heard } = rig(scriptedDecoder({ wait }).decoder);
    const samples = concatenate([quiet(300), near(300), quiet(2_400)]);
    await expect(ear.hear({ samples, sampleRateHz: 16_000 })).rejects.toThrow('broken');
    await play(quiet(900), part('stop', 30), quiet(1_500), near(300), quiet(600));
    expect(heard().map(({ kind }) => kind)).toEqual(['reply', 'stop', 'reply']);
  });

  it('that was nothing is not reported, and one that no wording stands for is unclear', async () => {
    const nothing = scriptedDecoder({ verdict: () => ({ kind: 'nothing' }) });
    const silent = rig(nothing.decoder);
    await silent.play(quiet(600), near(600), quiet(600));
    expect(silent.reports).toEqual([]);
    const other = rig(scriptedDecoder({ verdict: () => ({ ...yes, text: 'correct maybe' }) }).decoder);
    await other.play(quiet(600), near(600), quiet(600));
    expect(other.heard()).toEqual([{ kind: 'unclear', text: 'correct maybe', reason: 'outOfGrammar' }]);
  });
});

describe('a number with a breath in it', () => {
  const gauge: Grammar = {
    key: 'gauge',
    stop: ['stop'],
    replies: [],
    number: { id: 'pressure', leads: [], units: [], min: 0, max: 99, step: 1 },
  };

  it.each([
    ['taken', 390, ['number', 'unclear']],
    ['not understood', 390, ['unclear', 'unclear']],
    ['taken', 990, ['number', 'number']],
  ])('that was %s up to it: after %d ms of silence', async (first, silenceMs, kinds) => {
    const { decoder } = scriptedDecoder({
      outlook: () => 'complete',
      verdict: nth => {
        if (nth > 1) return { kind: 'taken', text: 'one', certainty: 0.9 };
        return first === 'taken'
          ? { kind: 'taken', text: 'thirty', certainty: 0.9 }
          : { kind: 'unclear', text: 'thirty', reason: 'lowConfidence' };
      },
    });
    const { ear, play, heard } = rig(decoder);
    ear.listen(gauge);
    await play(quiet(600), near(300), quiet(silenceMs), near(300), quiet(600));
    expect(heard().map(({ kind }) => kind)).toEqual(kinds);
  });
});

describe('a question that changes', () => {
  const second = { ...grammar, key: 'second' };

  it('is not answered by what began before it, even if it changes back; what begins after it answers it', async () => {
    const { ear, play, heard } = rig(scriptedDecoder().decoder);
    await play(quiet(600), near(300));
    ear.listen(second);
    ear.listen(grammar);
    await play(near(300), quiet(600));
    expect(heard()).toMatchObject([{ kind: 'unclear', reason: 'outOfGrammar' }]);
    await play(near(300), quiet(600));
    expect(heard().at(-1)).toMatchObject({ kind: 'reply' });
  });

  it('has not changed when it is put again in the same words', async () => {
    const { ear, play, heard } = rig(scriptedDecoder().decoder);
    await play(quiet(600), near(300));
    ear.listen(structuredClone(grammar));
    await play(near(300), quiet(600));
    expect(heard()).toMatchObject([{ kind: 'reply' }]);
  });

  it('is in force for the decoder from the next utterance on, never in the middle of one', async () => {
    const { decoder, given } = scriptedDecoder();
    const { ear, play } = rig(decoder);
    await play(quiet(600), near(300));
    ear.listen(second);
    await play(near(300), quiet(600), near(300), quiet(600));
    expect(given.map(({ key }) => key)).toEqual(['first', 'second']);
  });

  it('may change from whoever is told of an answer', async () => {
    const { ear, play } = rig(scriptedDecoder().decoder);
    const kinds: string[] = [];
    ear.onHeard(({ kind }) => {
      kinds.push(kind);
      ear.listen(kinds.length % 2 === 0 ? grammar : second);
      ear.onlyStop(true);
      ear.onlyStop(false);
    });
    for (let n = 0; n < 4; n++) await play(quiet(600), near(300), quiet(600));
    expect(kinds).toEqual(['reply', 'reply', 'reply', 'reply']);
  });
});

describe("the tool's own voice", () => {
  it.each(['before', 'during'])('mutes what was under way %s it, to its end', async when => {
    const { ear, play, reports } = rig(scriptedDecoder().decoder);
    await play(quiet(600), ...(when === 'before' ? [near(300)] : []));
    ear.onlyStop(true);
    await play(near(300));
    ear.onlyStop(false);
    await play(near(300), quiet(600));
    expect(reports).toEqual([]);
    await play(near(300), quiet(600));
    expect(reports).toHaveLength(1);
  });
});
