import { VoiceError } from '../../voice/errors.ts';
import type { AudioSink, Pcm } from '../../voice/ports.ts';

/** Plays sound through the page's audio; a page may do so once it was touched. */
export class Loudspeaker implements AudioSink {
  readonly description = "the device's loudspeaker";
  readonly #context: AudioContext;
  #playing: AudioBufferSourceNode | undefined;

  constructor(context: AudioContext) {
    this.#context = context;
  }

  /** @throws VoiceError (by rejection) when the browser does not let the page sound */
  async play({ samples, sampleRateHz }: Pcm): Promise<void> {
    if (this.#context.state !== 'running') await this.#context.resume();
    if (this.#context.state !== 'running') {
      throw new VoiceError('loudspeakerUnusable', 'The browser lets nothing be heard yet; touch the screen.');
    }
    const buffer = this.#context.createBuffer(1, Math.max(1, samples.length), sampleRateHz);
    buffer.copyToChannel(new Float32Array(samples), 0);
    const node = this.#context.createBufferSource();
    node.buffer = buffer;
    node.connect(this.#context.destination);
    await new Promise<void>(resolve => {
      node.onended = () => resolve();
      this.#playing = node;
      node.start();
    });
    if (this.#playing === node) this.#playing = undefined;
  }

  cut(): void {
    this.#playing?.stop();
  }

  async close(): Promise<void> {
    this.cut();
  }
}
