import { createVoskDecoder } from '../decoders/vosk/decoder.ts';
import type { VoskEngine } from '../decoders/vosk/engine.ts';
import { createEar } from '../ear/ear.ts';
import { createPlainFrontEnd } from '../front-end.ts';
import type { Pronounce } from '../phone-network/phone-graph.ts';
import type { Weights } from '../phone-network/weights.ts';
import type { SoundRecognizer } from '../ports.ts';
import { hearingBy } from './by-network.ts';

/** Hears with a running Vosk; near speech and stops are heard by the phone network, as ever. */
export const createVoskEar = (engine: VoskEngine, weights: Weights, pronounce: Pronounce): SoundRecognizer =>
  createEar({
    frontEnd: createPlainFrontEnd(),
    decoder: createVoskDecoder(engine),
    ...hearingBy(weights, pronounce),
  });
