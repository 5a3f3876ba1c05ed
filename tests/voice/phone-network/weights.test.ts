import { readFileSync } from 'node:fs';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { loadWeights } from '../../../src/voice/phone-network/load-node.ts';
import { createPhoneNetwork } from '../../../src/voice/phone-network/network.ts';
import { readWeights, tensorOf } from '../../../src/voice/phone-network/weights.ts';

const mark = 'first-fire phone network 1\n';

function fileOf(header: unknown, numbers: readonly number[]): Uint8Array {
  const text = new TextEncoder().encode(JSON.stringify(header));
  const bytes = new Uint8Array(mark.length + 4 + text.length + 2 * numbers.length);
  const view = new DataView(bytes.buffer);
  bytes.set(new TextEncoder().encode(mark));
  view.setUint32(mark.length, text.length, true);
  bytes.set(text, mark.length + 4);
  numbers.forEach((number, i) => {
    view.setInt16(mark.length + 4 + text.length + 2 * i, number, true);
  });
  return bytes;
}

const header = {
  tensors: [
    { name: 'a', shape: [2, 1], step: 0.5 },
    { name: 'b', shape: [1], step: 2 },
  ],
};
const file = fileOf(header, [3, -4, 7]);

describe('the file of the network', () => {
  it('holds tensors as 16-bit steps', () => {
    const weights = readWeights(file);
    expect(tensorOf(weights, 'a', [2, 1]).values).toEqual(Float32Array.of(1.5, -2));
    expect(tensorOf(weights, 'b', [1]).values).toEqual(Float32Array.of(14));
  });

  it('is refused in one sentence, whatever is damaged', () => {
    const refused = (bytes: Uint8Array, why: string) =>
      expect(() => readWeights(bytes)).toThrow(
        `The file of the phone network is damaged (${why}); install first-fire again.`,
      );
    refused(new Uint8Array(), 'it begins otherwise');
    refused(file.subarray(0, mark.length + 2), 'it was cut short');
    refused(file.subarray(0, mark.length + 8), 'it was cut short');
    refused(file.subarray(0, -1), 'it was cut short');
    refused(Uint8Array.of(...file, 0), 'it is longer than it says');
    refused(fileOf({ tensors: [{ name: 'a', shape: [0], step: 1 }] }, []), 'its header cannot be read');
    expect(() => tensorOf(readWeights(file), 'a', [1, 2])).toThrow('it has no "a" of 1 by 2');
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
    expect(() => createPhoneNetwork(readWeights(file))).toThrow('it has no "layer.0" of 5 by 128 by 40');
  });
});

describe('the network', () => {
  /** Made by acoustic-model/reference.py with PyTorch, an independent implementation of every layer. */
  const reference: {
    readonly moments: readonly { readonly phones: readonly number[]; readonly near: number }[];
  } = JSON.parse(readFileSync(new URL('./reference.json', import.meta.url), 'utf8'));

  it('says of a sound what PyTorch says with the same weights', async () => {
    const network = createPhoneNetwork(await loadWeights());
    // A tone that rises from 200 Hz by 1000 Hz a second, and falls silent in the end.
    const sound = Float32Array.from({ length: 32_000 }, (_, i) => {
      const s = i / 16_000;
      return s < 1.5 ? 0.2 * Math.sin(2 * Math.PI * (200 * s + 500 * s * s)) : 0;
    });
    const moments: { phones: Float32Array; near: number }[] = [];
    for (let at = 0; at < sound.length; at += 777) moments.push(...network(sound.subarray(at, at + 777)));
    expect(moments).toHaveLength(reference.moments.length);
    reference.moments.forEach(({ phones, near }, i) => {
      phones.forEach((likelihood, phone) => {
        expect(Math.abs((moments[i]?.phones[phone] ?? Number.NaN) - likelihood)).toBeLessThan(0.05);
      });
      expect(Math.abs((moments[i]?.near ?? Number.NaN) - near)).toBeLessThan(0.01);
    });
  });
});
