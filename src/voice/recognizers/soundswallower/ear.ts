import type { SoundSwallowerModule } from 'soundswallower';
import { Endpointer, type SpeechEvent } from '../../endpointing.ts';
import { isClipping, levelDbfs } from '../../levels.ts';
import type { EarLevel, Grammar, Heard, Pcm, SoundRecognizer } from '../../ports.ts';
import { englishPronunciations } from '../../pronunciations.ts';
import { createResampler } from '../../resample.ts';
import { createDecoder, type Engine } from './decoder.ts';
import { type ListeningGrammar, prepareGrammar } from './listening-grammar.ts';
import { Utterance } from './utterance.ts';

/** Pseudo-words, one for each phone, that stand in for talk outside the grammar. */
async function fillerWords(module: SoundSwallowerModule, model: string): Promise<Record<string, string[]>> {
  const phones = Object.keys(await module.load_json(`${model}/phoneset.json`));
  const speech = phones.filter(phone => /^[A-Z]+$/.test(phone) && phone !== 'SIL');
  return Object.fromEntries(speech.map(phone => [`ph_${phone.toLowerCase()}`, [phone]]));
}

/**
 * The embedded recognizer on a loaded engine, in Node or in a browser's worker. It decodes while
 * people speak, and only then.
 * @throws VoiceError `modelUnusable` when the model is damaged; `listen` throws `wordUnknown` and
 * `grammarUnusable`, `hear` throws `soundUnusable`.
 */
export async function createEar(engine: Engine): Promise<SoundRecognizer> {
  const decoder = await createDecoder(engine);
  const fillers = await fillerWords(engine.module, engine.model);
  decoder.addWords({ ...englishPronunciations, ...fillers });
  const resampler = createResampler();
  const endpointer = new Endpointer();

  let onHeard: (heard: Heard) => void = () => {};
  let onLevel: (level: EarLevel) => void = () => {};
  /** What may be said now, and what the decoder was last told of it. */
  let wanted: ListeningGrammar | undefined;
  let inForce: ListeningGrammar | undefined;
  let stopOnly = false;
  let utterance: Utterance | undefined;
  let closed = false;
  let earlier: Promise<void> = Promise.resolve();

  const begin = (grammar: ListeningGrammar) =>
    new Utterance(decoder, grammar.matcher, stopOnly, heard => {
      if (!closed) onHeard(heard);
    });

  function take(event: SpeechEvent): void {
    if (event.kind === 'begin') {
      if (wanted === undefined) return;
      if (inForce !== wanted) decoder.setGrammar(wanted.jsgf);
      inForce = wanted;
      utterance = begin(wanted);
      utterance.hear(event.samples);
    } else if (event.kind === 'more') {
      utterance?.hear(event.samples);
    } else {
      utterance?.end(event.cause);
      utterance = undefined;
    }
  }

  async function process(block: Pcm): Promise<void> {
    const samples = await resampler.next(block);
    if (closed) return;
    // Between utterances, so that a large grammar does not hold up the first word.
    if (utterance === undefined && wanted !== undefined && inForce !== wanted) {
      decoder.setGrammar(wanted.jsgf);
      inForce = wanted;
    }
    for (const event of endpointer.next(samples)) take(event);
    onLevel({
      levelDbfs: levelDbfs(block.samples),
      clipping: isClipping(block.samples),
      speech: endpointer.speaking,
    });
  }

  return {
    listen(grammar: Grammar) {
      const next = prepareGrammar(grammar, decoder, Object.keys(fillers), wanted);
      if (next === wanted) return;
      wanted = next;
      // What was begun before the question changed is no answer to the new one.
      utterance?.outdate();
    },
    onlyStop(active) {
      if (stopOnly === active) return;
      stopOnly = active;
      if (active) utterance?.mute();
      else if (utterance !== undefined && inForce !== undefined) {
        // The rest of this stretch of sound may be an answer; what was said with the tool is not.
        utterance.end('cut');
        utterance = begin(inForce);
      }
    },
    onHeard(handler) {
      onHeard = handler;
    },
    onLevel(handler) {
      onLevel = handler;
    },
    hear(block) {
      const done = earlier.then(() => process(block));
      earlier = done.catch(() => {});
      return done;
    },
    close() {
      if (closed) return;
      closed = true;
      void earlier.then(() => {
        decoder.close();
        resampler.close();
      });
    },
  };
}
