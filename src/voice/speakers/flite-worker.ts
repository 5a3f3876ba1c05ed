import { readFileSync } from 'node:fs';
import { parentPort, workerData } from 'node:worker_threads';
import { type FliteVoice, speakWithFlite } from './flite-voice.ts';
import type { SpeechReply, SpeechRequest } from './speech-messages.ts';

export interface WorkerStart {
  readonly modulePath: string;
  readonly voice: FliteVoice;
}

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
