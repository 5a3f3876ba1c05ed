import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { decodeWav } from '../../../src/voice/audio/wav.ts';
import { encodeWav, wavHeader } from '../../../src/voice/audio/wav-encode.ts';
import { VoiceError } from '../../../src/voice/errors.ts';
import { tone } from '../../helpers/tones.ts';

const good = encodeWav(tone(0.1));

/** The good file with some bytes of it changed. */
function altered(change: (view: DataView) => void, length = good.length): Uint8Array {
  const bytes = good.slice(0, length);
  change(new DataView(bytes.buffer));
  return bytes;
}

const refusal = (bytes: Uint8Array): string => {
  try {
    decodeWav(bytes, 'bay.wav');
  } catch (error) {
    expect(error).toBeInstanceOf(VoiceError);
    return String(error instanceof Error ? error.message : error);
  }
  throw new Error('the file was taken');
};

describe('a WAV file', () => {
  it('comes back as it was written, to half a step of 16 bits', () => {
    const samples = fc.float32Array({
      min: -1,
      max: Math.fround(0.9999),
      noNaN: true,
      minLength: 1,
      maxLength: 500,
    });
    fc.assert(
      fc.property(samples, fc.integer({ min: 8_000, max: 192_000 }), (samples, sampleRateHz) => {
        const back = decodeWav(encodeWav({ samples, sampleRateHz }), 'x');
        expect(back.sampleRateHz).toBe(sampleRateHz);
        expect(back.samples.length).toBe(samples.length);
        const off = samples.map((sample, i) => Math.abs(sample - (back.samples[i] ?? Number.NaN)));
        expect(Math.max(...off)).toBeLessThanOrEqual(1 / 65_536 + 1e-9);
      }),
    );
  });

  it('is limited to full scale when written, and what is not a number becomes silence', () => {
    const samples = Float32Array.of(7, -7, Number.NaN, Number.POSITIVE_INFINITY);
    const back = decodeWav(encodeWav({ samples, sampleRateHz: 16_000 }), 'x');
    expect([...back.samples]).toEqual([32_767 / 32_768, -1, 0, 32_767 / 32_768]);
  });

  it.each([0, 0xffff_ffff, 0x7fff_ffff])('with its length left open (%i) is read to its end', length => {
    const bytes = altered(view => {
      view.setUint32(4, length, true);
      view.setUint32(40, length, true);
    });
    expect(decodeWav(bytes, 'x').samples).toEqual(decodeWav(good, 'x').samples);
  });

  it('of a recording cut by a power loss is read up to the last whole sample', () => {
    const streamed = new Uint8Array([...wavHeader(16_000), 0, 64, 0, 192, 1]);
    expect([...decodeWav(streamed, 'x').samples]).toEqual([0.5, -0.5]);
  });

  it('may carry other chunks, of odd length too, before and after its sound', () => {
    const note = [...new TextEncoder().encode('LIST'), 3, 0, 0, 0, 1, 2, 3, 0];
    const bytes = new Uint8Array([...good.slice(0, 12), ...note, ...good.slice(12), ...note]);
    expect(decodeWav(bytes, 'x').samples).toEqual(decodeWav(good, 'x').samples);
  });
});

describe('a file that is no usable sound is refused in one sentence', () => {
  it.each<[string, Uint8Array, RegExp]>([
    ['nothing at all', new Uint8Array(), /^bay\.wav is not a WAV file/],
    ['text', new TextEncoder().encode('oil pressure forty'), /is not a WAV file/],
    ['only a header', good.slice(0, 36), /has no sound in it/],
    ['a broken-off copy', good.slice(0, 1000), /breaks off: 956 of 3200 bytes/],
    ['no samples', altered(view => view.setUint32(40, 0, true), 44), /zero samples/],
    ['a compressed kind', altered(view => view.setUint16(20, 0x55, true)), /format 85/],
    ['a rate of zero', altered(view => view.setUint32(24, 0, true)), /claims 0 samples a second/],
    ['a rate above 192 kHz', altered(view => view.setUint32(24, 192_001, true)), /claims 192001/],
    ['a rate below 8 kHz', altered(view => view.setUint32(24, 7_999, true)), /claims 7999/],
    ['no channels', altered(view => view.setUint16(22, 0, true)), /0 channels/],
    ['six channels', altered(view => view.setUint16(22, 6, true)), /6 channels/],
    ['12 bits', altered(view => view.setUint16(34, 12, true)), /12 bits/],
    ['frames that do not fit', altered(view => view.setUint16(32, 3, true)), /contradicts itself/],
    ['a damaged format chunk', altered(view => view.setUint32(16, 0x7fff_ffff, true)), /damaged format/],
    ['sound before its format', altered(view => view.setUint32(12, 0x20202020)), /sound before its format/],
  ])('%s', (_what, bytes, sentence) => {
    const message = refusal(bytes);
    expect(message).toMatch(sentence);
    expect(message).toMatch(/^bay\.wav [^\n]*\.$/);
  });

  it('and no bytes whatever break the reader in another way', () => {
    const start = fc.constantFrom(...[0, 12, 20, 36, 44].map(length => [...good.slice(0, length)]));
    const noise = fc.uint8Array({ maxLength: 300 });
    fc.assert(
      fc.property(start, noise, (head, tail) => {
        try {
          const { samples, sampleRateHz } = decodeWav(new Uint8Array([...head, ...tail]), 'x');
          expect(samples.length).toBeGreaterThan(0);
          expect(samples.every(sample => sample >= -1 && sample <= 1)).toBe(true);
          expect(sampleRateHz).toBeGreaterThanOrEqual(8_000);
        } catch (error) {
          if (!(error instanceof VoiceError)) throw error;
        }
      }),
      { numRuns: 3_000 },
    );
  });

  it('and a good file with any one byte changed is read or refused, never anything else', () => {
    fc.assert(
      fc.property(fc.integer({ min: 0, max: 47 }), fc.integer({ min: 0, max: 255 }), (at, value) => {
        try {
          decodeWav(
            altered(view => view.setUint8(at, value)),
            'x',
          );
        } catch (error) {
          if (!(error instanceof VoiceError)) throw error;
        }
      }),
      { numRuns: 2_000 },
    );
  });
});
