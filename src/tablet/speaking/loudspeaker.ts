import { VoiceError } from '../../voice/errors.ts';
import type { AudioSink, Pcm } from '../../voice/ports.ts';
import { watchAsleep } from '../device/audio.ts';

/** A sound that has not come to its end so long after it should have is over. */
const LATE_MS = 1000;

const unheard = () =>
  new VoiceError(
    'loudspeakerUnusable',
    'The browser let a sentence not be heard, which it does before a touch; read it on the screen.',
  );

/** Plays sound through the page's audio; a page may do so once it was touched. */
export class Loudspeaker implements AudioSink {
  readonly description = "the device's loudspeaker";
  readonly #context: AudioContext;
  #cut: () => void = () => {};

  constructor(context: AudioContext) {
    this.#context = context;
  }

  /**
   * Settles within a second of the end of the sound, whatever the browser does.
   * @throws VoiceError (by rejection) when the browser does not let the page sound
   */
  async play({ samples, sampleRateHz }: Pcm): Promise<void> {
    const buffer = this.#context.createBuffer(1, Math.max(1, samples.length), sampleRateHz);
    buffer.copyToChannel(new Float32Array(samples), 0);
    const node = this.#context.createBufferSource();
    node.buffer = buffer;
    node.connect(this.#context.destination);
    let release = () => {};
    try {
      await new Promise<void>((resolve, reject) => {
        let begun = false;
        const late = { timer: 0 };
        const stopWatching = watchAsleep(this.#context, isAsleep => {
          if (isAsleep) return reject(unheard());
          if (begun) return;
          begun = true;
          node.onended = () => resolve();
          node.start();
          late.timer = window.setTimeout(() => reject(unheard()), 1000 * buffer.duration + LATE_MS);
        });
        release = () => {
          stopWatching();
          clearTimeout(late.timer);
          if (begun) node.stop();
          node.disconnect();
        };
        this.#cut = resolve;
      });
    } finally {
      release();
      this.#cut = () => {};
    }
  }

  cut(): void {
    this.#cut();
  }

  async close(): Promise<void> {
    this.cut();
  }
}
