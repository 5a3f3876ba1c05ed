import type { Decoder, SoundSwallowerModule } from 'soundswallower';
import { VoiceError } from '../../errors.ts';
import { speechRateHz } from '../../resample.ts';
import { certaintyOf } from './certainty.ts';

/** The engine and where its acoustic model lies (a directory, or an address in the browser). */
export interface Engine {
  readonly module: SoundSwallowerModule;
  readonly model: string;
}

/** What was decoded: the words, and how sure the engine is of them (0 to 1, see `certaintyOf`). */
export interface Decoded {
  readonly text: string;
  readonly confidence: number;
}

/** One decoder of the engine, always with a grammar set, at 16 kHz. */
export interface GrammarDecoder {
  /** Throws when the grammar has words without a pronunciation: check with `missingWords` first. */
  setGrammar(jsgf: string): void;
  missingWords(words: readonly string[]): readonly string[];
  /** All pronunciations of a word; none when it is unknown. */
  pronunciationsOf(word: string): readonly string[];
  /** Teaches words, each with its pronunciations; those already known keep what they have too. */
  addWords(pronunciations: Readonly<Record<string, readonly string[]>>): void;
  /** A whole utterance: slower to begin with, but heard alike whatever was heard before it. */
  decode(samples: Float32Array): Decoded;
  /** An utterance piece by piece: the text so far. */
  start(): void;
  feed(samples: Float32Array): string;
  stop(): string;
  close(): void;
}

/** The fault for a model whose files are there but cannot be used. */
export const modelDamaged = (model: string, cause?: unknown): VoiceError =>
  new VoiceError(
    'modelUnusable',
    `The speech model in ${model} is damaged or incomplete; install it again.`,
    { cause },
  );

/**
 * Settings that differ from the packaged ones, each found better on clean speech of six voices
 * (348 replies, 316 other sentences; single runs).
 */
const settings = {
  loglevel: 'FATAL',
  samprate: speechRateHz,
  // Phones without regard to their neighbours: half the work, no fewer exact replies, and a
  // certainty that tells right from wrong far better.
  cionly: true,
  // Pauses between words: the packaged 0.005 hears a breath as a word.
  silprob: 0.1,
  // Dearer words: the packaged 0.65 adds a digit at the end too readily.
  wip: 0.05,
};

/** Digital silence is unlike anything the model was trained on; this is far below a microphone's noise. */
const ditherPeak = 0.001;

/** Adds a little noise, the same from the beginning of each utterance on: a recording is always heard alike. */
function createDither(): (samples: Float32Array) => Float32Array {
  let state = 1;
  return samples =>
    samples.map(sample => {
      state = (Math.imul(state, 1_664_525) + 1_013_904_223) >>> 0;
      return sample + (state / 2_147_483_648 - 1) * ditherPeak;
    });
}

function decoded(decoder: Decoder): Decoded {
  const text = decoder.get_text();
  return { text, confidence: text === '' ? 0 : certaintyOf(decoder.get_alignment().w ?? []) };
}

/**
 * Loads a decoder.
 * @param dictionary with an empty one it knows only the words that it is taught
 * @throws VoiceError `modelUnusable` when the model's files are missing or damaged.
 */
export async function createDecoder(
  { module, model }: Engine,
  dictionary: 'packaged' | 'empty',
): Promise<GrammarDecoder> {
  // A dictionary that is not found is left out without a complaint.
  const words = dictionary === 'empty' ? { dict: `${model}/none` } : {};
  const decoder = new module.Decoder({ hmm: model, ...settings, ...words });
  try {
    await decoder.initialize();
  } catch (cause) {
    decoder.delete();
    throw modelDamaged(model, cause);
  }
  let dither = createDither();
  const known = (word: string) => decoder.lookup_word(word) ?? undefined;
  const pronunciationsOf = (word: string): readonly string[] => {
    const all: string[] = [];
    for (let phones = known(word); phones !== undefined; phones = known(`${word}(${all.length + 1})`)) {
      all.push(phones);
    }
    return all;
  };

  return {
    setGrammar: jsgf => decoder.set_grammar(jsgf),
    missingWords: words => words.filter(word => known(word) === undefined),
    pronunciationsOf,
    addWords(pronunciations) {
      const entries = Object.entries(pronunciations).flatMap(([word, all]) => {
        const before = pronunciationsOf(word);
        const fresh = all.filter(phones => !before.includes(phones));
        return fresh.map((phones, i): [string, string] => {
          const nth = before.length + i + 1;
          return [nth === 1 ? word : `${word}(${nth})`, phones];
        });
      });
      if (entries.length > 0) decoder.add_words(...entries);
    },
    decode(samples) {
      decoder.start();
      decoder.process_audio(createDither()(samples), false, true);
      decoder.stop();
      return decoded(decoder);
    },
    start() {
      dither = createDither();
      decoder.start();
    },
    feed(samples) {
      decoder.process_audio(dither(samples));
      return decoder.get_text();
    },
    stop() {
      decoder.stop();
      return decoder.get_text();
    },
    close: () => decoder.delete(),
  };
}
