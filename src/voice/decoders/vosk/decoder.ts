import { concatenate } from '../../concatenate.ts';
import type { Decoder, Progress } from '../../ear/decoder.ts';
import { verdictOf } from '../../ear/verdict.ts';
import type { Matcher } from '../../meaning.ts';
import { speechRateHz } from '../../resample.ts';
import type { VoskAnswer, VoskEngine, VoskWord } from './engine.ts';
import { UNKNOWN, voskGrammar } from './grammar.ts';

/** Sound is handed on in pieces of this length: each is an answer that may hold a stop. */
const pieceSamples = speechRateHz / 10;
/**
 * The least that Vosk must be sure of its least certain word. Not measured: there was no model to measure with. It is
 * the bound that is used for other services which give a certainty.
 */
const leastConfidence = 0.8;

/** A grammar as Vosk listens by it. */
export interface VoskGrammar {
  readonly matcher: Matcher;
  readonly phrases: readonly string[];
}

/** Decodes with a running Vosk, whose model the user brought. */
export function createVoskDecoder(engine: VoskEngine): Decoder<VoskGrammar> {
  let grammar: VoskGrammar | undefined;
  let waiting: Float32Array[] = [];
  let waitingSamples = 0;
  /** Vosk may take a pause for an end: what it finished before the speaker was through. */
  let words: VoskWord[] = [];
  let unfinished = '';

  const textOf = (last = '') =>
    [...words.map(({ word }) => word), last].filter(word => word !== '').join(' ');

  function take(answer: VoskAnswer): void {
    if (answer.kind === 'final') words.push(...answer.words);
    unfinished = answer.kind === 'partial' ? answer.text : '';
  }

  async function handOn(): Promise<void> {
    if (waitingSamples === 0) return;
    const samples = concatenate(waiting);
    waiting = [];
    waitingSamples = 0;
    take(await engine.accept(samples));
  }

  function progress(): Progress {
    const text = textOf(unfinished);
    const stop = grammar?.matcher.meaningOf(text)?.kind === 'stop' ? text : undefined;
    return { outlook: 'extensible', stop };
  }

  return {
    prepare: (next, matcher) => ({ matcher, phrases: voskGrammar(next) }),
    begin(prepared) {
      if (prepared !== grammar) engine.setPhrases(prepared.phrases);
      grammar = prepared;
      words = [];
      unfinished = '';
    },
    async hear({ heard }) {
      waiting.push(heard);
      waitingSamples += heard.length;
      if (waitingSamples >= pieceSamples) await handOn();
      return progress();
    },
    async end() {
      await handOn();
      take(await engine.finish());
      const text = textOf();
      const { stop } = progress();
      if (stop !== undefined) return { kind: 'stop', text: stop };
      if (words.some(({ word }) => word === UNKNOWN))
        return { kind: 'unclear', text, reason: 'outOfGrammar' };
      return verdictOf(text, Math.min(...words.map(({ conf }) => conf)), leastConfidence);
    },
    close: () => engine.close(),
  };
}
