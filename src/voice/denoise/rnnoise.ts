// The package's synchronous build: RNNoise 0.2, whose newer network was heard better than that of the other builds.
import createModule, { type RnnoiseModule } from '@jitsi/rnnoise-wasm/dist/rnnoise-sync.js';
import { FrameBuffer } from '../frame-buffer.ts';

/** 10 ms at 48 kHz: what the network was trained on; nothing else may be fed to it. */
const frameLength = 480;
/** How late a sample comes out, at 48 kHz: the frames overlap by half. */
export const denoiserDelay = frameLength;
const bytesPerSample = 4;
const fullScale = 32_768;

/** Takes steady noise out of a stream at 48 kHz, 10 ms at a time and as much behind. */
export interface Denoiser {
  /** The next piece of the stream, of any length; what does not fill a frame waits for the next. */
  next(samples: Float32Array): Float32Array;
  close(): void;
}

let loaded: RnnoiseModule | undefined;

/** The RNNoise network, in Node, a browser page or a worker. */
export function createDenoiser(): Denoiser {
  loaded ??= createModule();
  const module = loaded;
  const state = module._rnnoise_create(0);
  const memory = module._malloc(frameLength * bytesPerSample);
  const at = memory / bytesPerSample;
  const frames = new FrameBuffer(frameLength);
  let closed = false;

  return {
    next(samples) {
      const whole = closed ? [] : frames.next(samples);
      const cleaned = new Float32Array(whole.length * frameLength);
      for (const [i, frame] of whole.entries()) {
        for (let k = 0; k < frameLength; k++) module.HEAPF32[at + k] = (frame[k] ?? 0) * fullScale;
        module._rnnoise_process_frame(state, memory, memory);
        for (let k = 0; k < frameLength; k++)
          cleaned[i * frameLength + k] = (module.HEAPF32[at + k] ?? 0) / fullScale;
      }
      return cleaned;
    },
    close() {
      if (closed) return;
      closed = true;
      module._free(memory);
      module._rnnoise_destroy(state);
    },
  };
}
