import { Endpointer, type SpeechEvent } from '../endpointing.ts';
import { createDenoisingFrontEnd, type FrontEnd } from '../front-end.ts';
import { createMatcher, type Matcher } from '../meaning.ts';
import { NoiseMeter } from '../noise-meter.ts';
import type { EarLevel, Heard, Pcm, SoundRecognizer } from '../ports.ts';
import { speechRateHz } from '../resample.ts';
import type { VoskEngine } from './engine.ts';
import { voskGrammar } from './grammar.ts';
import { VoskUtterance } from './utterance.ts';

/** The noise is measured 20 ms at a time. */
const meterLength = speechRateHz / 50;

interface Prepared {
  readonly fingerprint: string;
  readonly matcher: Matcher;
  readonly phrases: readonly string[];
}

/** Listens with Vosk: the same front end and the same decisions as the embedded recognizer. */
export function createVoskEar(
  engine: VoskEngine,
  frontEnd: FrontEnd = createDenoisingFrontEnd(),
): SoundRecognizer {
  const endpointer = new Endpointer();
  const meter = new NoiseMeter(speechRateHz);
  let onHeard: (heard: Heard) => void = () => {};
  let onLevel: (level: EarLevel) => void = () => {};
  let wanted: Prepared | undefined;
  let inForce: Prepared | undefined;
  let stopOnly = false;
  let utterance: VoskUtterance | undefined;
  let closed = false;
  let earlier: Promise<void> = Promise.resolve();

  const report = (heard: Heard) => {
    if (!closed) onHeard(heard);
  };

  /** Between utterances only: new phrases forget what was heard. */
  function putInForce(): Prepared | undefined {
    if (wanted !== undefined && inForce !== wanted) {
      engine.setPhrases(wanted.phrases);
      inForce = wanted;
    }
    return inForce;
  }

  async function take(event: SpeechEvent): Promise<void> {
    if (event.kind === 'begin') {
      const grammar = putInForce();
      if (grammar) utterance = new VoskUtterance({ engine, matcher: grammar.matcher, report }, stopOnly);
    }
    if (event.kind === 'end') {
      const ended = utterance;
      utterance = undefined;
      await ended?.end(event.cause);
    } else if (event.kind !== 'pause') await utterance?.hear(event.samples);
  }

  async function process(block: Pcm): Promise<void> {
    const { raw, heard } = await frontEnd.next(block);
    if (closed) return;
    if (utterance === undefined) putInForce();
    for (let at = 0; at < heard.length; at += meterLength) {
      for (const event of endpointer.next(heard.subarray(at, at + meterLength))) await take(event);
      meter.next(raw.subarray(at, at + meterLength), endpointer.speaking);
    }
    onLevel(meter.report(block, endpointer.speaking));
  }

  return {
    listen(grammar) {
      const fingerprint = JSON.stringify(grammar);
      if (closed || fingerprint === wanted?.fingerprint) return;
      wanted = { fingerprint, matcher: createMatcher(grammar), phrases: voskGrammar(grammar) };
      utterance?.outdate();
    },
    onlyStop(active) {
      if (stopOnly === active) return;
      stopOnly = active;
      // Half of what began under the tool's own voice may mean the opposite of the whole.
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
        engine.close();
        frontEnd.close();
      });
    },
  };
}
