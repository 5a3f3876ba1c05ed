import { describe, expect, it, onTestFinished } from 'vitest';
import { synthesize } from '../../../audio-fixtures/synthesize.ts';
import { concatenate } from '../../../src/voice/concatenate.ts';
import type { Decoder, Verdict } from '../../../src/voice/ear/decoder.ts';
import { createHearingNetwork } from '../../../src/voice/ear/hearing-network.ts';
import { type Sound, stepLength } from '../../../src/voice/ear/sound.ts';
import { FrameBuffer } from '../../../src/voice/frame-buffer.ts';
import { createMatcher } from '../../../src/voice/meaning.ts';
import { loadWeights } from '../../../src/voice/phone-network/load-node.ts';
import type { Grammar } from '../../../src/voice/ports.ts';
import { noise } from '../../helpers/noise.ts';
import { grammar } from '../recognizers/contract.ts';

const weights = await loadWeights();

/** Half a second: the longest that the ear waits for an end. */
const silentSteps = 25;

/** What is louder than a hundredth of the loudest, and some silence around it: what the ear makes an utterance of. */
function utteranceIn(samples: Float32Array): Float32Array {
  const loudest = samples.reduce((most, sample) => Math.max(most, Math.abs(sample)), 0);
  const isLoud = (sample: number) => Math.abs(sample) > loudest / 100;
  const next = noise(1);
  const room = Float32Array.from({ length: silentSteps * stepLength }, () => next() * 1e-4);
  return concatenate([room, samples.slice(samples.findIndex(isLoud), samples.findLastIndex(isLoud)), room]);
}

/** A sound step by step, with what the network hears of it. */
function stepsOf(samples: Float32Array): readonly Sound[] {
  const network = createHearingNetwork(weights);
  return new FrameBuffer(stepLength)
    .next(utteranceIn(samples))
    .map(raw => ({ raw, heard: raw, moments: network.next(raw) }));
}

const spoken = (text: string) => stepsOf(synthesize('flite-slt', text).samples);

/** An utterance from its begin to its end, as the ear would give it. */
async function decode<Prepared>(
  decoder: Decoder<Prepared>,
  prepared: Prepared,
  steps: readonly Sound[],
): Promise<{ readonly verdict: Verdict; readonly stops: readonly string[] }> {
  const stops: string[] = [];
  decoder.begin(prepared);
  for (const [i, step] of steps.entries()) {
    const silentMs = Math.max(0, (i + 1 - (steps.length - silentSteps)) * 20);
    const { stop, outlook } = await decoder.hear(step, silentMs);
    expect(['complete', 'extensible', 'figures', 'unfinished']).toContain(outlook);
    if (stop !== undefined) stops.push(stop);
  }
  return { verdict: await decoder.end(), stops };
}

/**
 * What every decoder does, whatever it decodes with.
 * @param create a decoder for English; `says` tells one that cannot hear what it is about to be given
 */
export function decoderContract<Prepared>(
  name: string,
  create: () => Promise<{ readonly decoder: Decoder<Prepared>; readonly says?: (text: string) => void }>,
): void {
  describe(`a decoder (${name})`, () => {
    async function decoding(asked: Grammar = grammar) {
      const { decoder, says } = await create();
      onTestFinished(() => decoder.close());
      const { meaningOf } = createMatcher(asked);
      const prepared = decoder.prepare(asked, createMatcher(asked));
      return {
        decoder,
        prepared,
        meaningOf,
        async say(text: string, as = prepared) {
          says?.(text);
          return decode(decoder, as, spoken(text));
        },
      };
    }

    it('takes what is in the grammar, in its words, with a certainty of 0 to 1', async () => {
      const { say, meaningOf } = await decoding();
      for (const text of ['affirmative', 'coolant is full', 'oil pressure forty two', 'sixty eight pounds']) {
        const { verdict } = await say(text);
        expect(verdict).toMatchObject({ kind: 'taken' });
        if (verdict.kind !== 'taken') continue;
        expect(meaningOf(verdict.text)).toEqual(meaningOf(text));
        expect(verdict.certainty).toBeGreaterThan(0);
        expect(verdict.certainty).toBeLessThanOrEqual(1);
      }
    });

    it('does not take other talk, nor what stops, nor silence', async () => {
      const { decoder, prepared, say } = await decoding();
      for (const text of ['give me the big hammer', 'the weather is lovely this morning'])
        expect((await say(text)).verdict.kind).toBe('unclear');
      decoder.begin(prepared);
      expect((await decoder.end()).kind).not.toBe('taken');
    });

    it('hears a stop on the way, or at the end, or writes it down: it is never lost in a reply', async () => {
      const { say, meaningOf } = await decoding();
      for (const text of ['stop', 'shut it down', 'please stop']) {
        const { verdict, stops } = await say(text);
        const written = verdict.kind === 'taken' && meaningOf(verdict.text)?.kind === 'stop';
        const lost = verdict.kind === 'taken' && !written;
        expect(lost, text).toBe(false);
        expect(stops.length > 0 || verdict.kind === 'stop' || written, text).toBe(true);
      }
    });

    it('decodes an utterance alike, whatever was heard before it', async () => {
      const { decoder, prepared, say } = await decoding();
      const alone = await say('coolant is full');
      const next = noise(3);
      await decode(decoder, prepared, stepsOf(Float32Array.from({ length: 16_000 }, () => next() * 0.1)));
      await say('give me the big hammer');
      expect(await say('coolant is full')).toEqual(alone);
    });

    it('prepares a grammar without a change to the one in force, and goes by each as it is begun', async () => {
      const { decoder, say } = await decoding();
      const other: Grammar = {
        ...grammar,
        key: 'other',
        replies: [{ id: 'ready', wordings: ['we are ready'] }],
      };
      const prepared = decoder.prepare(other, createMatcher(other));
      expect((await say('affirmative')).verdict.kind).toBe('taken');
      expect((await say('we are ready')).verdict.kind).not.toBe('taken');
      expect((await say('we are ready', prepared)).verdict.kind).toBe('taken');
      expect((await say('affirmative', prepared)).verdict.kind).not.toBe('taken');
    });
  });
}
