import type { Pcm } from './ports.ts';
import { createResampler } from './resample.ts';

/** A piece of the stream at 16 kHz: as it came in, and as it is listened to. The same length; `heard` may be late. */
export interface FrontEndPiece {
  readonly raw: Float32Array;
  readonly heard: Float32Array;
}

/** What all sound passes before it is listened to, in the terminal and in a browser alike. */
export interface FrontEnd {
  /** @throws VoiceError `soundUnusable` for rates that cannot be used. */
  next(block: Pcm): Promise<FrontEndPiece>;
  close(): void;
}

/** Brings sound to 16 kHz and leaves it as it is. */
export function createPlainFrontEnd(): FrontEnd {
  const resampler = createResampler();
  return {
    async next(block) {
      const raw = await resampler.next(block);
      return { raw, heard: raw };
    },
    close: () => resampler.close(),
  };
}
