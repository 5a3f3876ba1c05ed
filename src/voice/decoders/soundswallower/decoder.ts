import { concatenate } from '../../concatenate.ts';
import type { Decoder, Verdict } from '../../ear/decoder.ts';
import { verdictOf } from '../../ear/verdict.ts';
import { voiceLanguage } from '../../languages/index.ts';
import type { SpokenLanguage } from '../../ports.ts';
import { speechRateHz } from '../../resample.ts';
import { leastCertainty } from './certainty.ts';
import { createDecoder, type Decoded, type Engine, modelDamaged } from './engine.ts';
import { type ListeningGrammar, prepareGrammar } from './listening-grammar.ts';
import { createStopLoop } from './stop-loop.ts';

/** Pseudo-words, one for each phone, that stand in for talk outside the grammar. */
async function fillerWords({ module, model }: Engine): Promise<Record<string, string[]>> {
  const phones: unknown = await module.load_json(`${model}/phoneset.json`).catch((cause: unknown) => {
    throw modelDamaged(model, cause);
  });
  const speech = Object.keys(Object(phones)).filter(phone => /^[A-Za-z]+$/.test(phone) && phone !== 'SIL');
  return Object.fromEntries(speech.map(phone => [`ph_${phone.toLowerCase()}`, [phone]]));
}

/** How often the text so far is looked at for a stop wording. */
const checkEverySamples = (speechRateHz * 60) / 1000;
/** A stop wording counts once it has stood in the text this many looks in a row. */
const looksToStop = 2;
/** A silence in which the answer is worked out, to be there when it turns out to be the end. */
const pauseMs = 120;

/** The text as people read it: without the pseudo-words that stand for other talk. */
const readable = (text: string) =>
  text
    .split(' ')
    .filter(word => !word.startsWith('ph_'))
    .join(' ');

const nothing: Decoded = { text: '', confidence: 0 };

/**
 * Decodes with SoundSwallower: the whole utterance in each pause, and beside it, as it comes, stop words alone.
 * @throws VoiceError `modelUnusable` when the model is damaged; `prepare` throws `wordUnknown` and `grammarUnusable`.
 */
export async function createSoundSwallowerDecoder(
  engine: Engine,
  language: SpokenLanguage,
): Promise<Decoder<ListeningGrammar>> {
  const { wordsOfDictionary, pronunciations, soundingLikeStop } = voiceLanguage(language).hearing;
  const fillers = await fillerWords(engine);
  const decoder = await createDecoder(engine, 'packaged');
  if (decoder.missingWords(wordsOfDictionary).length > 0) throw modelDamaged(engine.model);
  decoder.addWords({ ...pronunciations, ...fillers });
  const stopDecoder = await createDecoder(engine, 'empty');
  stopDecoder.addWords(fillers);
  const stopLoop = createStopLoop(stopDecoder, {
    fillers: Object.keys(fillers),
    soundingLikeStop,
    pronounce: decoder.pronunciationsOf,
  });

  let inForce: ListeningGrammar | undefined;
  let heard: Float32Array[] = [];
  let waiting: Float32Array[] = [];
  let waitingSamples = 0;
  let looksWithStop = 0;
  let paused = false;
  /** What was said up to the last pause. */
  let said = nothing;

  /** The stop wording that stands in the text for long enough. */
  function look(): string | undefined {
    const samples = concatenate(waiting);
    waiting = [];
    waitingSamples = 0;
    heard.push(samples);
    const stop = stopLoop.feed(samples);
    looksWithStop = stop === undefined ? 0 : looksWithStop + 1;
    return looksWithStop >= looksToStop ? stop : undefined;
  }

  return {
    prepare: grammar => prepareGrammar(grammar, decoder, Object.keys(fillers)),
    begin(prepared) {
      if (prepared !== inForce) {
        stopLoop.listen(prepared.grammar.stop, prepared.words);
        decoder.setGrammar(prepared.jsgf);
        inForce = prepared;
      }
      heard = [];
      said = nothing;
      looksWithStop = 0;
      paused = false;
      stopLoop.start();
    },
    hear({ heard: samples }, silentMs) {
      waiting.push(samples);
      waitingSamples += samples.length;
      const pausing = silentMs >= pauseMs;
      const begins = pausing && !paused;
      paused = pausing;
      const stop = waitingSamples >= checkEverySamples || begins ? look() : undefined;
      if (begins) said = decoder.decode(concatenate(heard));
      return { outlook: 'extensible', stop };
    },
    end(): Verdict {
      const onTheWay = waitingSamples > 0 ? look() : undefined;
      const stop = stopLoop.end() ?? onTheWay;
      if (stop !== undefined) return { kind: 'stop', text: stop };
      const text = readable(said.text);
      if (said.text !== text) return { kind: 'unclear', text, reason: 'outOfGrammar' };
      return verdictOf(text, said.confidence, leastCertainty);
    },
    close() {
      decoder.close();
      stopLoop.close();
    },
  };
}
