import { concatenate } from './concatenate.ts';
import { VoiceError } from './errors.ts';
import type { Pcm } from './ports.ts';

/** What the recognizers listen at. */
export const speechRateHz = 16_000;

/** Turns a stream of blocks of any rate into one stream of one rate, without seams between blocks. */
export interface Resampler {
  /** The next piece of the stream; it lags behind by a few milliseconds of filter. */
  next(block: Pcm): Promise<Float32Array>;
  close(): void;
}

const slowestHz = 4_000;
const fastestHz = 192_000;
/** The converter itself cuts up blocks of a million samples and more, and does it wrongly. */
const longestPiece = 100_000;

/** Loaded where it is needed only: it is large, and a source may have the right rate. */
async function createConverter(fromHz: number, toHz: number) {
  const loaded = await import('@alexanderolsen/libsamplerate-js');
  // CommonJS that calls itself an ES module: Node and vite hand its exports over as `default`, tsx as the module.
  const { create, ConverterType } = loaded.default ?? loaded;
  return create(1, fromHz, toHz, { converterType: ConverterType.SRC_SINC_FASTEST });
}

/**
 * A streaming resampler to `toHz`. A source that changes its rate midway is taken up anew.
 * @throws VoiceError `soundUnusable` for rates outside 4 to 192 kHz.
 */
export function createResampler(toHz: number = speechRateHz): Resampler {
  let converter: { readonly fromHz: number; readonly ready: ReturnType<typeof createConverter> } | undefined;
  const drop = () => {
    void converter?.ready.then(ready => ready.destroy());
    converter = undefined;
  };
  return {
    async next({ samples, sampleRateHz }) {
      if (!(sampleRateHz >= slowestHz && sampleRateHz <= fastestHz)) {
        throw new VoiceError(
          'soundUnusable',
          `Sound at ${sampleRateHz} samples a second cannot be used; set the source to ${slowestHz} to ${fastestHz}.`,
        );
      }
      if (sampleRateHz === toHz) {
        drop();
        return samples;
      }
      if (converter?.fromHz !== sampleRateHz) {
        drop();
        converter = {
          fromHz: sampleRateHz,
          ready: createConverter(sampleRateHz, toHz),
        };
      }
      const ready = await converter.ready;
      const pieces: Float32Array[] = [];
      for (let at = 0; at < samples.length; at += longestPiece) {
        pieces.push(ready.full(samples.subarray(at, at + longestPiece)));
      }
      return concatenate(pieces);
    },
    close: drop,
  };
}
