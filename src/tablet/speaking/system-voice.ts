import { VoiceError } from '../../voice/errors.ts';
import type { AudioSink, Pcm, Synthesizer } from '../../voice/ports.ts';

/** Slower than anybody speaks, and a start; a voice that takes longer has lost its end. */
const MS_PER_CHARACTER = 150;
const START_MS = 8_000;
const VOICES_COME_WITHIN_MS = 1_000;
/** A little quicker than it comes, as far as it stays clear. */
const RATE = 1.05;

const unusable = (why: string) =>
  new VoiceError('speechUnusable', `The device's voice failed (${why}); read the sentence on the screen.`);

let listed: Promise<void> | undefined;

/** Some browsers list their voices only a while after they were first asked for: asked early, nobody waits for it. */
export function askForVoices(): Promise<void> {
  listed ??= new Promise(resolve => {
    if (!('speechSynthesis' in window) || speechSynthesis.getVoices().length > 0) return resolve();
    speechSynthesis.addEventListener('voiceschanged', () => resolve(), { once: true });
    setTimeout(resolve, VOICES_COME_WITHIN_MS);
  });
  return listed;
}

/** The system's voices of a language that need no network. */
export async function systemVoices(language: string): Promise<readonly SpeechSynthesisVoice[]> {
  await askForVoices();
  if (!('speechSynthesis' in window)) return [];
  return speechSynthesis
    .getVoices()
    .filter(voice => voice.localService && voice.lang.toLowerCase().startsWith(language));
}

/** The device's own voice. It makes no sound that could be kept: the sentence is made while it is played. */
export class SystemVoice implements Synthesizer, AudioSink {
  readonly description: string;
  readonly #voice: SpeechSynthesisVoice;
  readonly #texts = new WeakMap<Pcm, string>();
  #cut: () => void = () => {};

  constructor(voice: SpeechSynthesisVoice) {
    this.#voice = voice;
    this.description = `the device's voice ${voice.name}`;
  }

  async synthesize(text: string): Promise<Pcm> {
    const sound: Pcm = { samples: new Float32Array(0), sampleRateHz: 16_000 };
    this.#texts.set(sound, text);
    return sound;
  }

  /** @throws VoiceError (by rejection) when the voice fails or does not come to its end */
  play(sound: Pcm): Promise<void> {
    return this.#speak(this.#texts.get(sound) ?? '', 1);
  }

  /** Whether it speaks at all, tried without a sound. */
  async works(): Promise<boolean> {
    return this.#speak('ready', 0).then(
      () => true,
      () => false,
    );
  }

  cut(): void {
    this.#cut();
    speechSynthesis.cancel();
  }

  async close(): Promise<void> {
    this.cut();
  }

  #speak(text: string, volume: number): Promise<void> {
    return new Promise((resolve, reject) => {
      const utterance = new SpeechSynthesisUtterance(text);
      utterance.voice = this.#voice;
      utterance.lang = this.#voice.lang;
      utterance.rate = RATE;
      utterance.volume = volume;
      const limit = setTimeout(
        () => {
          speechSynthesis.cancel();
          reject(unusable('it did not come to its end'));
        },
        START_MS + MS_PER_CHARACTER * text.length,
      );
      const over = () => {
        clearTimeout(limit);
        resolve();
      };
      this.#cut = over;
      utterance.onend = over;
      utterance.onerror = ({ error }) => {
        clearTimeout(limit);
        if (error === 'canceled' || error === 'interrupted') resolve();
        else reject(unusable(error));
      };
      speechSynthesis.speak(utterance);
    });
  }
}
