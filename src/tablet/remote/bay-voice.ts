import type { Sentence } from '../../voice/speech-queue.ts';
import type { Speaking } from '../speaking/choose.ts';

const sentenceOf = (cause: unknown) => (cause instanceof Error ? cause.message : String(cause));

/** The voice of this device in its bay, from before it is there: what it cannot say is a trouble of the bay. */
export class BayVoice {
  readonly #speaking: Promise<Speaking | null>;
  readonly #trouble: (sentence: string) => void;

  /** @param onSpeaking told while a sentence sounds, and when it is over */
  constructor(
    speaking: Promise<Speaking>,
    onSpeaking: (speaks: boolean) => void,
    trouble: (sentence: string) => void,
  ) {
    this.#trouble = trouble;
    this.#speaking = speaking.then(
      opened => {
        opened.speech.onSpeaking(sentence => onSpeaking(sentence !== undefined));
        return opened;
      },
      (cause: unknown) => {
        trouble(`The device's voice failed (${sentenceOf(cause)}); read the sentence on the screen.`);
        return null;
      },
    );
  }

  /** Settles when it was said, or will not be; it never rejects. */
  async say(sentence: Pick<Sentence, 'text' | 'priority'>): Promise<void> {
    const outcome = await (await this.#speaking)?.speech.enqueue(sentence);
    if (outcome?.kind === 'failed') this.#trouble(outcome.reason);
  }

  /** Drops what waits, hazards excepted. */
  hush(): void {
    void this.#speaking.then(opened => opened?.speech.clear());
  }

  async close(): Promise<void> {
    await (await this.#speaking)?.close();
  }
}
