import { readFileSync } from 'node:fs';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { synthesize } from '../../../audio-fixtures/synthesize.ts';
import { loadWeights } from '../../../src/voice/phone-network/load-node.ts';
import {
  createPhoneNetwork,
  type Moment,
  phonesLateMomentsOf,
} from '../../../src/voice/phone-network/network.ts';
import { blank, outputOf } from '../../../src/voice/phone-network/phones.ts';
import { readWeights } from '../../../src/voice/phone-network/weights.ts';
import { noise } from '../../helpers/noise.ts';

/** Logarithms of probabilities of every so many moments. */
interface Reference {
  readonly every: number;
  readonly phones: readonly (readonly number[])[];
  readonly early: readonly (readonly number[])[];
  readonly near: readonly number[];
}

const mark = 'first-fire phone network 2\n';

function fileOf(header: unknown, numbers: readonly number[]): Uint8Array {
  const text = new TextEncoder().encode(JSON.stringify(header));
  const bytes = new Uint8Array(mark.length + 4 + text.length + numbers.length);
  bytes.set(new TextEncoder().encode(mark));
  new DataView(bytes.buffer).setUint32(mark.length, text.length, true);
  bytes.set(text, mark.length + 4);
  bytes.set(numbers, mark.length + 4 + text.length);
  return bytes;
}

const floats = (...values: number[]) => [...new Uint8Array(Float32Array.from(values).buffer)];
const header = {
  tensors: [
    { kind: 'matrix', name: 'a', rows: 2, columns: 3 },
    { kind: 'row', name: 'b', length: 2 },
  ],
};
const file = fileOf(header, [...floats(0.5, 2), 1, 2, 255, 128, 0, 127, ...floats(1.5, -3)]);

describe('the file of the network', () => {
  it('holds matrices as 8-bit numbers with a step a row, and rows as they are', () => {
    const weights = readWeights(file);
    expect(weights.matrix('a', 2, 3)).toEqual({
      rows: 2,
      columns: 3,
      values: Int8Array.of(1, 2, -1, -128, 0, 127),
      steps: Float32Array.of(0.5, 2),
    });
    expect(weights.row('b', 2)).toEqual(Float32Array.of(1.5, -3));
  });

  it('is read alike out of a larger piece of memory', () => {
    const within = Buffer.concat([Buffer.alloc(11, 7), file]).subarray(11);
    expect(readWeights(within).matrix('a', 2, 3)).toEqual(readWeights(file).matrix('a', 2, 3));
  });

  it('is refused in one sentence, whatever is damaged', () => {
    const refused = (bytes: Uint8Array, why: string) =>
      expect(() => readWeights(bytes)).toThrow(
        `The file of a network is damaged (${why}); install first-fire again.`,
      );
    refused(new Uint8Array(), 'it begins otherwise');
    refused(file.subarray(0, mark.length + 2), 'it was cut short');
    refused(file.subarray(0, mark.length + 8), 'it was cut short');
    refused(file.subarray(0, -1), 'it was cut short');
    refused(Uint8Array.of(...file, 0), 'it is longer than it says');
    refused(fileOf({ tensors: [{ kind: 'row', name: 'a', length: 0 }] }, []), 'its header cannot be read');
    expect(() => readWeights(file).matrix('a', 3, 2)).toThrow('it has no "a" of 3 by 2');
    expect(() => readWeights(file).row('b', 3)).toThrow('it has no "b" of 3');
  });

  it('is read or refused, and never anything else, when bytes in it are changed', () => {
    fc.assert(
      fc.property(fc.nat(file.length - 1), fc.integer({ min: 0, max: 255 }), (at, value) => {
        const changed = file.slice();
        changed[at] = value;
        try {
          readWeights(changed);
        } catch (cause) {
          expect(cause).toMatchObject({ code: 'modelUnusable' });
        }
      }),
    );
  });

  it('is told of when it is missing', async () => {
    await expect(loadWeights('/nowhere/english.bin')).rejects.toMatchObject({ code: 'modelUnusable' });
  });

  it('has to be that of this network', () => {
    expect(() => createPhoneNetwork(readWeights(file))).toThrow('it has no "stem1" of 96 by 384');
  });
});

describe('the network', () => {
  /** Made by acoustic-model/reference.py with PyTorch, an independent implementation of every layer. */
  const { every, phones, early, near }: Reference = JSON.parse(
    readFileSync(new URL('./reference.json', import.meta.url), 'utf8'),
  );

  it('says of a sound what PyTorch says with the same weights, but for their rounding', async () => {
    const weights = await loadWeights();
    const phonesLateMoments = phonesLateMomentsOf(weights);
    const network = createPhoneNetwork(weights);
    // A tone that rises from 200 Hz by 500 Hz a second, with silence around it.
    const sound = Float32Array.from({ length: 64_000 }, (_, i) => {
      const s = i / 16_000;
      return s > 0.3 && s < 3.4 ? 0.2 * Math.sin(2 * Math.PI * (200 * s + 250 * s * s)) : 0;
    });
    const moments: Moment[] = [];
    for (let at = 0; at < sound.length; at += 777) moments.push(...network(sound.subarray(at, at + 777)));
    const alike = (found: ArrayLike<number> | undefined, expected: readonly number[]) =>
      expected.forEach((logarithm, i) => {
        expect(Math.abs(Math.exp(found?.[i] ?? Number.NaN) - Math.exp(logarithm))).toBeLessThan(0.02);
      });
    // The last moments wait for what comes after them.
    const told = moments.length - phonesLateMoments;
    expect(near.length * every - told).toBeLessThan(8);
    for (let i = 0; i * every < told; i++) {
      alike(moments[i * every + phonesLateMoments]?.phones, phones[i] ?? []);
      alike(moments[i * every]?.early, early[i] ?? []);
      expect(Math.abs((moments[i * every]?.near ?? Number.NaN) - (near[i] ?? 0))).toBeLessThan(0.02);
    }
  });

  it('hears the same whatever the pieces are that the sound comes in', async () => {
    const weights = await loadWeights();
    const sound = Float32Array.from({ length: 16_000 }, (_, i) => 0.1 * Math.sin(i * i * 1e-5));
    const whole = createPhoneNetwork(weights)(sound);
    expect(whole.length).toBeGreaterThan(25);
    for (const length of [1, 160, 4_096]) {
      const network = createPhoneNetwork(weights);
      const pieces: Moment[] = [];
      for (let at = 0; at < sound.length; at += length)
        pieces.push(...network(sound.subarray(at, at + length)));
      expect(pieces).toEqual(whole);
    }
  });
  it('rests while the line is as good as dead, and is there with the first sound', async () => {
    const weights = await loadWeights();
    const next = noise(3);
    const hiss = (seconds: number, peak: number) =>
      Float32Array.from({ length: seconds * 16_000 }, () => next() * peak);
    const faint = synthesize('flite-slt', 'stop').samples.map(sample => sample * 10 ** (-40 / 20));
    const resting = createPhoneNetwork(weights);
    const quiet = resting(hiss(20, 1e-5));
    expect(quiet.length).toBeGreaterThan(600);
    expect(quiet.slice(60).every(({ near, early }) => near === 0 && early[blank] === 0)).toBe(true);
    const said = [...resting(faint), ...resting(hiss(0.5, 1e-5))];
    const spelled = said
      .map(({ early }) => early.indexOf(Math.max(...early)))
      .filter(phone => phone !== blank);
    expect(new Set(spelled)).toEqual(new Set(['S', 'T', 'AA', 'P'].map(outputOf)));
  });
});
