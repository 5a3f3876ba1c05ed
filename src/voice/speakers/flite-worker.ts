import { readFileSync } from 'node:fs';
import { parentPort, workerData } from 'node:worker_threads';
import { type FliteVoice, speakWithFlite } from './flite-voice.ts';

export interface WorkerStart {
  readonly modulePath: string;
  readonly voice: FliteVoice;
}

export interface SpeechRequest {
  readonly id: number;
  readonly text: string;
}

export type SpeechReply =
  | { readonly id: number; readonly samples: Float32Array<ArrayBuffer>; readonly sampleRateHz: number }
  | { readonly id: number; readonly failure: string };

const { modulePath, voice }: WorkerStart = workerData;
const module = new WebAssembly.Module(readFileSync(modulePath));

parentPort?.on('message', ({ id, text }: SpeechRequest) => {
  try {
    const { samples, sampleRateHz } = speakWithFlite(module, voice, text);
    const own = new Float32Array(samples);
    const reply: SpeechReply = { id, samples: own, sampleRateHz };
    parentPort?.postMessage(reply, [own.buffer]);
  } catch (cause) {
    const reply: SpeechReply = { id, failure: cause instanceof Error ? cause.message : String(cause) };
    parentPort?.postMessage(reply);
  }
});
