/** The package has no types of its own; these are the parts of it that are used. */
declare module '@jitsi/rnnoise-wasm/dist/rnnoise-sync.js' {
  export interface RnnoiseModule {
    /** A view of the whole memory; a new one whenever the memory grows. */
    readonly HEAPF32: Float32Array;
    _malloc(bytes: number): number;
    _free(address: number): void;
    /** @param model 0 for the built-in one */
    _rnnoise_create(model: number): number;
    _rnnoise_destroy(state: number): void;
    /** Cleans one frame (samples scaled to 16 bits); answers how likely there is speech in it, 0 to 1. */
    _rnnoise_process_frame(state: number, output: number, input: number): number;
  }
  /** Ready at once: the network is part of the file. */
  export default function createModule(): RnnoiseModule;
}
