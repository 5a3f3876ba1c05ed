import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Grammar } from '../../../src/voice/ports.ts';
import { grammar, type Part, part, rig, scriptedDecoder, yes } from './rig.ts';

const second: Grammar = { ...grammar, key: 'second' };
const stops = (heard: readonly { readonly kind: string }[]) =>
  heard.filter(({ kind }) => kind === 'stop').length;

describe('stop', () => {
  it('is reported in the very moment in which it is heard, whatever goes on: property', async () => {
    const before = fc.array(
      fc.tuple(fc.constantFrom<Part>('quiet', 'near', 'doubt'), fc.integer({ min: 1, max: 20 })),
      {
        maxLength: 6,
      },
    );
    const doing = fc.constantFrom<(ear: ReturnType<typeof rig>['ear']) => void>(
      () => {},
      ear => ear.onlyStop(true),
      ear => ear.listen(second),
      ear => {
        ear.onlyStop(true);
        ear.onlyStop(false);
        ear.listen(second);
        ear.listen(grammar);
      },
    );
    await fc.assert(
      fc.asyncProperty(before, doing, async (parts, act) => {
        const { ear, play, heard } = rig(scriptedDecoder().decoder);
        await play(part('quiet', 300), ...parts.map(([kind, n]) => part(kind, 30 * n)));
        act(ear);
        const already = stops(heard());
        // The blocks that hold the moment, and not one more.
        await play(part('stop', 30), part('quiet', 30));
        expect(stops(heard())).toBe(already + 1);
      }),
      { numRuns: 60 },
    );
  });

  it('waits for no decoder, not even for one that never answers again', async () => {
    const { decoder } = scriptedDecoder({ wait: () => new Promise(() => {}) });
    const { ear, heard } = rig(decoder);
    const hear = (samples: Float32Array) => void ear.hear({ samples, sampleRateHz: 16_000 });
    hear(part('quiet', 600));
    hear(part('near', 600));
    hear(part('stop', 60));
    await new Promise(setImmediate);
    expect(heard()).toMatchObject([{ kind: 'stop' }]);
    hear(part('quiet', 3_000));
    hear(part('stop', 60));
    await new Promise(setImmediate);
    expect(stops(heard())).toBe(2);
  });

  it('is heard after a decoder broke down, and after sound that could not be used', async () => {
    const { decoder } = scriptedDecoder({ wait: () => Promise.reject(new Error('broken')) });
    const { ear, heard } = rig(decoder);
    const hear = (samples: Float32Array, sampleRateHz = 16_000) => ear.hear({ samples, sampleRateHz });
    await expect(hear(part('quiet', 600), 0)).rejects.toThrow();
    await expect(hear(part('near', 600))).rejects.toThrow('broken');
    await hear(part('stop', 60)).catch(() => {});
    expect(heard()).toMatchObject([{ kind: 'stop' }]);
  });

  it('is one report for an utterance, whoever hears it first, and nothing else is reported of it', async () => {
    const both = rig(
      scriptedDecoder({ stop: () => 'stop', verdict: () => ({ kind: 'stop', text: 'stop' }) }).decoder,
    );
    await both.play(
      part('quiet', 600),
      part('near', 300),
      part('stop', 90),
      part('near', 1_500),
      part('quiet', 900),
    );
    expect(both.heard()).toMatchObject([{ kind: 'stop' }]);
    const then = rig(scriptedDecoder().decoder);
    await then.play(
      part('quiet', 600),
      part('near', 300),
      part('stop', 30),
      part('near', 300),
      part('quiet', 900),
    );
    expect(then.heard()).toMatchObject([{ kind: 'stop' }]);
  });

  it('belongs to the utterance that is only then noticed, and the next one counts again', async () => {
    const { play, heard } = rig(scriptedDecoder().decoder);
    await play(part('quiet', 600), part('stop', 30), part('near', 300), part('quiet', 1_200));
    expect(heard()).toMatchObject([{ kind: 'stop' }]);
    await play(part('near', 300), part('quiet', 600));
    expect(heard()).toMatchObject([{ kind: 'stop' }, { kind: 'reply' }]);
  });

  it('is taken from a decoder too: on the way, at the end, and from a text that holds one', async () => {
    const onTheWay = rig(scriptedDecoder({ stop: () => 'stop' }).decoder);
    await onTheWay.play(part('quiet', 600), part('near', 300));
    expect(onTheWay.heard()).toMatchObject([{ kind: 'stop' }]);
    for (const verdict of [{ kind: 'stop', text: 'stop' } as const, { ...yes, text: 'correct stop' }]) {
      const atTheEnd = rig(scriptedDecoder({ verdict: () => verdict }).decoder);
      atTheEnd.ear.listen(second);
      await atTheEnd.play(part('quiet', 600), part('near', 300), part('quiet', 600));
      expect(atTheEnd.heard()).toMatchObject([{ kind: 'stop' }]);
    }
  });

  it('is not reported once the ear is closed', async () => {
    const { ear, play, heard } = rig(scriptedDecoder().decoder);
    await play(part('quiet', 600));
    ear.close();
    await play(part('stop', 90));
    expect(heard()).toEqual([]);
  });
});
