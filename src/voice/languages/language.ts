import type { LeastCertainty, NearBounds } from '../decoders/network/bounds.ts';
import type { Form, Token } from '../number-words/vocabulary.ts';
import type { SpokenLanguage } from '../ports.ts';

/** How a language says numbers: what is listened for, and what the tool says. */
export interface NumberWords {
  /** A digit 0 to 9 among other digits. */
  readonly digits: readonly Token[];
  /** Every way to say 0 to 9999 as a cardinal. */
  grouped(n: number): readonly Form[];
  /** Every way to say 0 to 99 as the two decimals after the point. */
  pair(n: number): readonly Form[];
  /** A zero before the point; the empty word where it may go unsaid. */
  readonly zeroBeforePoint: Token;
  readonly point: Token;
  readonly minus: Token;
  /** How the tool says a whole number from 0 to 999 999. */
  cardinal(n: number): string;
  /** What may stand before the decimals of typed figures: "." or ".,". */
  readonly decimalMarks: string;
}

/** A synthesizer that the system may bring: a program of its own, started for each sentence. */
export interface SystemSynthesizer {
  readonly program: string;
  /** What it is told to write `path` as a WAV file; the sentence comes on its standard input. */
  args(path: string): readonly string[];
}

/** What the embedded recognizer needs to know of a language. */
export interface LanguageHearing {
  /** All pronunciations of a word, in the phones of the language's network. */
  readonly pronounce: (word: string) => readonly string[];
  /** Certainty that the network has to have; the usual one where none stands here. */
  readonly leastCertainty?: LeastCertainty;
  /** How near somebody has to be who answers; the usual bounds where none stand here. */
  readonly nearBounds?: NearBounds;
  /** Everyday words that are easily taken for a stop word. */
  readonly soundingLikeStop: readonly string[];
}

/** A language as the voice chain needs it; its sentences and wordings come with the grammar. */
export interface VoiceLanguage {
  readonly code: SpokenLanguage;
  /** As browsers and their services name it (BCP 47). */
  readonly tag: string;
  /** Its name in English, for the messages of the command line. */
  readonly englishName: string;
  /** Who speaks it: the voice that is shipped, or the first of these programs that is installed. */
  readonly voice: 'embedded' | readonly SystemSynthesizer[];
  readonly numbers: NumberWords;
  /** None where no ear was taught it: then neither a reply nor a stop is heard, and `caution` says so. */
  readonly hearing?: LanguageHearing;
  /** What whoever relies on being heard has to know first, as a sentence in this language. */
  readonly caution?: string;
  /** Spellings that sound like another word, and that word, both without accents. */
  readonly homophones: Readonly<Record<string, string>>;
}
