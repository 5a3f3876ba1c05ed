import { durationMs } from '../audio/blocks.ts';
import type { Sleep } from '../audio/timer.ts';
import type { AudioSink, Pcm } from '../ports.ts';

/** No loudspeaker: takes as long as the sound would, so that a session keeps its timing. */
export class SilentSink implements AudioSink {
  readonly description: string;
  readonly #sleep: Sleep;
  #cutting = new AbortController();

  constructor(sleep: Sleep, description = 'silent, sentences are only shown') {
    this.description = description;
    this.#sleep = sleep;
  }

  async play(sound: Pcm, _label: string): Promise<void> {
    this.#cutting = new AbortController();
    await this.#sleep(durationMs(sound), this.#cutting.signal);
  }

  cut(): void {
    this.#cutting.abort();
  }

  async close(): Promise<void> {
    this.cut();
  }
}
