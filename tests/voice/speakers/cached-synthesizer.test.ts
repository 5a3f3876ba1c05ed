import fc from 'fast-check';
import { expect, it } from 'vitest';
import { VoiceError } from '../../../src/voice/errors.ts';
import type { Pcm } from '../../../src/voice/ports.ts';
import { CachedSynthesizer } from '../../../src/voice/speakers/cached-synthesizer.ts';

/** Speaks as many samples as the text has letters, and notes what it was asked. */
function counting() {
  const asked: string[] = [];
  const synthesize = async (text: string): Promise<Pcm> => {
    asked.push(text);
    if (text === 'broken') throw new VoiceError('speechUnusable', 'broken');
    return { samples: new Float32Array(text.length), sampleRateHz: 16_000 };
  };
  return { asked, synthesize };
}

it('a sentence is made once, also when it is asked for twice at the same time', async () => {
  const inner = counting();
  const cached = new CachedSynthesizer(inner);
  await Promise.all([cached.synthesize('stop'), cached.synthesize('stop')]);
  await cached.synthesize('stop');
  expect(inner.asked).toEqual(['stop']);
});

it('the sentence unused longest goes first', async () => {
  const inner = counting();
  const cached = new CachedSynthesizer(inner, 2);
  for (const text of ['a', 'b', 'a', 'c', 'a', 'b']) await cached.synthesize(text);
  expect(inner.asked).toEqual(['a', 'b', 'c', 'b']);
});

it('a failure is passed on and not remembered', async () => {
  const inner = counting();
  const cached = new CachedSynthesizer(inner);
  await expect(cached.synthesize('broken')).rejects.toThrow('broken');
  await expect(cached.synthesize('broken')).rejects.toThrow('broken');
  expect(inner.asked).toEqual(['broken', 'broken']);
});

it('whatever is asked in whatever order, each text gets its own sound', async () => {
  const texts = fc.array(fc.constantFrom('a', 'bb', 'ccc', 'dddd'), { maxLength: 40 });
  await fc.assert(
    fc.asyncProperty(texts, fc.integer({ min: 1, max: 4 }), async (texts, capacity) => {
      const cached = new CachedSynthesizer(counting(), capacity);
      for (const text of texts) expect((await cached.synthesize(text)).samples.length).toBe(text.length);
    }),
  );
});
