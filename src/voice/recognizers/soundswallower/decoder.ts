import type { Decoder, SoundSwallowerModule } from 'soundswallower';
import { VoiceError } from '../../errors.ts';
import { speechRateHz } from '../../resample.ts';

/** The engine and where its acoustic model lies (a directory, or an address in the browser). */
export interface Engine {
  readonly module: SoundSwallowerModule;
  readonly model: string;
}

/** What was decoded: the words, and how sure the engine is of the least sure of them (0 to 1). */
export interface Decoded {
  readonly text: string;
  readonly confidence: number;
}

/** One decoder of the engine, always with a grammar set, at 16 kHz. */
export interface GrammarDecoder {
  /** Throws when the grammar has words without a pronunciation: check with `missingWords` first. */
  setGrammar(jsgf: string): void;
  missingWords(words: readonly string[]): readonly string[];
  /** Teaches words, each with its pronunciations; those already known keep what they have too. */
  addWords(pronunciations: Readonly<Record<string, readonly string[]>>): void;
  /** An utterance piece by piece: the text so far. */
  start(): void;
  feed(samples: Float32Array): string;
  stop(): Decoded;
  close(): void;
}

/** Whether a decoded word is a word of the language: no silence, no noise, no null transition. */
const isWord = (word: string) => !/^[<[(+]/.test(word);

function decoded(decoder: Decoder): Decoded {
  const text = decoder.get_text();
  if (text === '') return { text, confidence: 0 };
  const words = (decoder.get_alignment().w ?? []).filter(({ t }) => isWord(t));
  return { text, confidence: words.length === 0 ? 0 : Math.min(...words.map(({ p }) => p)) };
}

/**
 * Loads a decoder.
 * @throws VoiceError `modelUnusable` when the model's files are missing or damaged.
 */
export async function createDecoder({ module, model }: Engine): Promise<GrammarDecoder> {
  const decoder = new module.Decoder({ hmm: model, loglevel: 'FATAL', samprate: speechRateHz });
  try {
    await decoder.initialize();
  } catch (cause) {
    decoder.delete();
    throw new VoiceError(
      'modelUnusable',
      `The speech model in ${model} is damaged or incomplete; install it again.`,
      { cause },
    );
  }
  const known = (word: string) => decoder.lookup_word(word) ?? undefined;

  return {
    setGrammar: jsgf => decoder.set_grammar(jsgf),
    missingWords: words => words.filter(word => known(word) === undefined),
    addWords(pronunciations) {
      const entries = Object.entries(pronunciations).flatMap(([word, all]) => {
        const fresh = all.filter(phones => phones !== known(word));
        const taken = known(word) === undefined ? 0 : 1;
        return fresh.map((phones, i): [string, string] => [
          i + taken === 0 ? word : `${word}(${i + taken + 1})`,
          phones,
        ]);
      });
      if (entries.length > 0) decoder.add_words(...entries);
    },
    start: () => decoder.start(),
    feed(samples) {
      decoder.process_audio(samples);
      return decoder.get_text();
    },
    stop() {
      decoder.stop();
      return decoded(decoder);
    },
    close: () => decoder.delete(),
  };
}
