import { defaultEndpointing, type SpeechEvent } from '../../endpointing.ts';
import { createDenoisingFrontEnd, createPlainFrontEnd } from '../../front-end.ts';
import { voiceLanguage } from '../../languages/index.ts';
import { NoiseMeter } from '../../noise-meter.ts';
import type { Weights } from '../../phone-network/weights.ts';
import type { EarLevel, Grammar, Heard, Pcm, SoundRecognizer, SpokenLanguage } from '../../ports.ts';
import { speechRateHz } from '../../resample.ts';
import { attentionByLevel, attentionByNetwork } from './attention.ts';
import { createDecoder, type Engine, modelDamaged } from './decoder.ts';
import { type ListeningGrammar, prepareGrammar } from './listening-grammar.ts';
import { createStopSpotter } from './stop-spotter.ts';
import { Utterance } from './utterance.ts';

/** Pseudo-words, one for each phone, that stand in for talk outside the grammar. */
async function fillerWords({ module, model }: Engine): Promise<Record<string, string[]>> {
  const phones: unknown = await module.load_json(`${model}/phoneset.json`).catch((cause: unknown) => {
    throw modelDamaged(model, cause);
  });
  const speech = Object.keys(Object(phones)).filter(phone => /^[A-Za-z]+$/.test(phone) && phone !== 'SIL');
  return Object.fromEntries(speech.map(phone => [`ph_${phone.toLowerCase()}`, [phone]]));
}

/** The noise is measured 20 ms at a time. */
const meterLength = speechRateHz / 50;
/** A stop may be heard before it is noticed that somebody speaks: an utterance so soon after it is the same one. */
const sameStopSamples = speechRateHz / 2;

export interface EarOptions {
  /** What is spoken: English when it is not named. */
  readonly language?: SpokenLanguage;
  /** Whether noise is taken out first; it is unless this is false. */
  readonly denoise?: boolean;
  /**
   * The network that hears whether somebody near is speaking, and stop words in noise. Without it speech is what is
   * louder than the noise.
   */
  readonly network?: Weights;
  /** Silence that ends a reply, where it is not the usual one. */
  readonly trailingSilenceMs?: number | undefined;
}

/**
 * The embedded recognizer on a loaded engine, in Node or in a browser's worker. It decodes while
 * people speak, and only then.
 * @throws VoiceError `modelUnusable` when the model is damaged; `listen` throws `wordUnknown` and
 * `grammarUnusable`, `hear` throws `soundUnusable`.
 */
export async function createEar(
  engine: Engine,
  {
    language = 'en',
    denoise = true,
    network,
    trailingSilenceMs = defaultEndpointing.trailingSilenceMs,
  }: EarOptions = {},
): Promise<SoundRecognizer> {
  const { wordsOfDictionary, pronunciations, soundingLikeStop } = voiceLanguage(language).hearing;
  const fillers = await fillerWords(engine);
  const decoder = await createDecoder(engine, 'packaged');
  if (decoder.missingWords(wordsOfDictionary).length > 0) throw modelDamaged(engine.model);
  decoder.addWords({ ...pronunciations, ...fillers });
  const stopDecoder = await createDecoder(engine, 'empty');
  stopDecoder.addWords(fillers);
  const spotter = createStopSpotter(stopDecoder, {
    fillers: Object.keys(fillers),
    soundingLikeStop,
    pronounce: decoder.pronunciationsOf,
  });
  const frontEnd = denoise ? createDenoisingFrontEnd() : createPlainFrontEnd();
  const attention =
    network === undefined
      ? attentionByLevel(trailingSilenceMs)
      : attentionByNetwork(network, decoder.pronunciationsOf, trailingSilenceMs);
  const meter = new NoiseMeter(speechRateHz);

  let onHeard: (heard: Heard) => void = () => {};
  let onLevel: (level: EarLevel) => void = () => {};
  /** What may be said now, and what the decoder was last told of it. */
  let wanted: ListeningGrammar | undefined;
  let inForce: ListeningGrammar | undefined;
  let stopOnly = false;
  let utterance: Utterance | undefined;
  let samplesSinceStop = sameStopSamples;
  let closed = false;
  let earlier: Promise<void> = Promise.resolve();

  const report = (heard: Heard) => {
    if (!closed) onHeard(heard);
  };

  /** Between utterances, so that a large grammar does not hold up the first word. */
  function putInForce(): ListeningGrammar | undefined {
    if (wanted === undefined || inForce === wanted) return wanted;
    spotter.listen(wanted.grammar.stop, wanted.words);
    attention.listen(wanted.grammar.stop);
    decoder.setGrammar(wanted.jsgf);
    inForce = wanted;
    return wanted;
  }

  /** Ends it first, so that whoever is told of it finds the ear between utterances. */
  function end(cause: 'silence' | 'tooLong'): void {
    const ended = utterance;
    utterance = undefined;
    ended?.end(cause);
  }

  function begin(): void {
    const grammar = putInForce();
    if (grammar === undefined) return;
    utterance = new Utterance({ decoder, spotter, matcher: grammar.matcher, report }, stopOnly);
    if (samplesSinceStop < sameStopSamples) utterance.settle();
  }

  /** A stop that the network heard: once for an utterance, whoever hears it first. */
  function stopHeard(text: string): void {
    if (utterance !== undefined) utterance.stop(text);
    else report({ kind: 'stop', text });
    samplesSinceStop = 0;
  }

  function take(event: SpeechEvent): void {
    if (event.kind === 'begin') begin();
    if (event.kind === 'end') end(event.cause);
    else if (event.kind === 'pause') utterance?.pause();
    else utterance?.hear(event.samples);
  }

  async function process(block: Pcm): Promise<void> {
    const { raw, heard, noisy } = await frontEnd.next(block);
    if (closed) return;
    if (utterance === undefined) putInForce();
    for (let at = 0; at < heard.length; at += meterLength) {
      const piece = raw.subarray(at, at + meterLength);
      const { events, stop } = attention.next(piece, heard.subarray(at, at + meterLength), noisy);
      if (stop !== undefined) stopHeard(stop);
      for (const event of events) take(event);
      meter.next(piece, attention.speaking);
      samplesSinceStop += piece.length;
    }
    onLevel(meter.report(block, attention.speaking));
  }

  return {
    listen(grammar: Grammar) {
      if (closed) return;
      const next = prepareGrammar(grammar, decoder, Object.keys(fillers), wanted);
      if (next === wanted) return;
      wanted = next;
      // What was begun before the question changed is no answer to the new one.
      utterance?.outdate();
    },
    onlyStop(active) {
      if (closed || stopOnly === active) return;
      stopOnly = active;
      // What began under the tool's own voice stays mute to its end: half of it may mean the opposite of the whole.
      if (active) utterance?.mute();
    },
    onHeard(handler) {
      onHeard = handler;
    },
    onLevel(handler) {
      onLevel = handler;
    },
    hear(block) {
      if (closed) return earlier;
      const done = earlier.then(() => process(block));
      earlier = done.catch(() => {});
      return done;
    },
    close() {
      if (closed) return;
      closed = true;
      void earlier.then(() => {
        decoder.close();
        spotter.close();
        frontEnd.close();
      });
    },
  };
}
