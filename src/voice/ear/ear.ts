import { FrameBuffer } from '../frame-buffer.ts';
import type { FrontEnd } from '../front-end.ts';
import { type Matcher, type Meaning, matcherOf } from '../meaning.ts';
import type { EarLevel, Grammar, Heard, Pcm, SoundRecognizer, VoiceHeard } from '../ports.ts';
import { speechRateHz } from '../resample.ts';
import { Background } from './background.ts';
import type { Decoder, Progress, Verdict } from './decoder.ts';
import { type HearingNetwork, hasPhone } from './moment.ts';
import { NoiseMeter } from './noise-meter.ts';
import { longestUtteranceMs, patienceFor, usualSilenceMs } from './patience.ts';
import { type Sound, stepLength, stepMs } from './sound.ts';
import type { SpeechDetector } from './speech-detector.ts';
import { SpokenPart } from './spoken-part.ts';
import type { StopSpotter } from './stop-spotter.ts';
import { createVoicePower } from './voice-power.ts';

/**
 * Stops so close to one another are one, and an utterance so soon after one belongs to it: a stop may be heard before it
 * is noticed that somebody speaks.
 */
const sameStopMs = 800;

/** A number so soon after another is the rest of it ("thirty", a breath, "one"), and no number of its own. */
const restOfNumberMs = 600;

/** It is noticed so late that somebody speaks: what is noticed this soon after the tool's voice began under it. */
const noticedLateMs = 120;
/** So long a call for help waits for the end of what it was spotted in. */
const longestHeldMs = 1500;

export interface EarParts<Prepared> {
  readonly frontEnd: FrontEnd;
  readonly decoder: Decoder<Prepared>;
  readonly speech: SpeechDetector;
  /** What stops are listened for with, always; without it the decoder alone hears them, in utterances. */
  readonly stops?: {
    readonly network: HearingNetwork;
    readonly spotter: StopSpotter;
    /** Calls for help have one of their own, so that nothing holds up a stop. */
    readonly calls?: StopSpotter;
  };
  /** Tells voices apart by the sound in which somebody speaks; null where that is too little. */
  readonly voiceIn?: ((samples: Float32Array) => Float32Array | null) | undefined;
  readonly trailingSilenceMs?: number | undefined;
}

/** What is listened for; a new one each time that the question changes, so that one is told from the next. */
interface Question<Prepared> {
  readonly fingerprint: string;
  readonly prepared: Prepared;
  readonly matcher: Matcher;
  /** What calls for help in it, whatever answers it. */
  readonly callsOf: Matcher;
}

/** One stretch of speech. */
interface Utterance<Prepared> {
  /** It answers this question and no other. */
  readonly question: Question<Prepared>;
  readonly fromMs: number;
  /** When it was noticed that somebody spoke. */
  readonly noticedMs: number;
  /** The tool spoke in the course of it: half of it may mean the opposite of the whole, so it can only stop. */
  underTool: boolean;
  silentMs: number;
  /** When somebody was last heard in it: where there is a network, not when the noise last seemed near. */
  spokenUpToMs: number;
  readonly spoken: SpokenPart;
}

/**
 * Listening, with any decoder: where near speech begins and ends, one report for an utterance, none for what was said
 * before the question changed or under the tool's own voice, the levels, and stop ahead of everything.
 *
 * Each block goes two ways. `sense` listens for stop words and reports them there and then; it waits for nothing but the
 * sound. `follow` makes utterances of the sound and waits for the decoder. The stop of the first way cannot be held up
 * by the second, nor by anything that it knows.
 *
 * `listen` throws as the decoder's `prepare`; `hear` throws `soundUnusable`.
 */
export function createEar<Prepared>({
  frontEnd,
  decoder,
  speech,
  stops,
  voiceIn,
  trailingSilenceMs = usualSilenceMs,
}: EarParts<Prepared>): SoundRecognizer {
  const steps = { raw: new FrameBuffer(stepLength), heard: new FrameBuffer(stepLength) };
  const meter = new NoiseMeter(speechRateHz);
  const voicePower = createVoicePower();
  const background = new Background();
  const patienceMs = patienceFor(trailingSilenceMs);

  let onHeard: (heard: Heard) => void = () => {};
  let onLevel: (level: EarLevel) => void = () => {};
  let onVoice: (heard: VoiceHeard) => void = () => {};
  let closed = false;
  const report = (heard: Heard) => {
    if (!closed) onHeard(heard);
  };

  // Stop. The clock of each way: the second may be behind.

  let sensedMs = 0;
  let followedMs = 0;
  let lastStopMs = Number.NEGATIVE_INFINITY;

  function stop(text: string, atMs: number): void {
    if (Math.abs(atMs - lastStopMs) < sameStopMs) return;
    lastStopMs = atMs;
    report({ kind: 'stop', text });
  }

  let lastCallMs = Number.NEGATIVE_INFINITY;
  /** A call that was spotted where an answer may be under way: what the decoder is sure of as an answer is no call. */
  let heldCall: { readonly heard: Heard; readonly atMs: number } | undefined;

  /** What answers the question is left to the decoder; while the tool speaks it answers none. */
  function callFor(text: string, atMs: number): Heard | undefined {
    const meaning = asked?.callsOf.meaningOf(text);
    const answers = !toolSpeaks && asked?.matcher.meaningOf(text)?.kind === 'reply';
    if (meaning?.kind !== 'stop' || answers || atMs - lastCallMs < sameStopMs) return undefined;
    return { ...meaning, text };
  }

  function call(heard: Heard | undefined, atMs: number): void {
    heldCall = undefined;
    if (heard === undefined) return;
    lastCallMs = atMs;
    report(heard);
  }

  function spotted(text: string, atMs: number): void {
    const heard = callFor(text, atMs);
    if (heard === undefined) return;
    if (toolSpeaks) call(heard, atMs);
    else heldCall ??= { heard, atMs };
  }

  /** No answer has come of what was spotted, or none in time. */
  function callHeld(): void {
    if (heldCall !== undefined) call(heldCall.heard, heldCall.atMs);
  }

  async function sense(block: Pcm): Promise<readonly Sound[]> {
    const { raw, heard } = await frontEnd.next(block);
    if (closed) return [];
    const heardSteps = steps.heard.next(heard);
    return steps.raw.next(raw).map((step, i) => {
      sensedMs += stepMs;
      const moments = stops?.network.next(step) ?? [];
      for (const moment of moments) {
        const text = stops?.spotter.next(moment);
        if (text !== undefined) stop(text, sensedMs);
        const called = stops?.calls?.next(moment);
        if (called !== undefined) spotted(called, sensedMs);
      }
      return { raw: step, heard: heardSteps[i] ?? step, moments };
    });
  }

  // Everything else.

  let asked: Question<Prepared> | undefined;
  let utterance: Utterance<Prepared> | undefined;
  let toolSpeaks = false;
  let toolCeasedMs = Number.NEGATIVE_INFINITY;
  const recent: Sound[] = [];

  async function follow(sounds: readonly Sound[]): Promise<void> {
    for (const sound of sounds) {
      followedMs += stepMs;
      const now = speech.next(sound);
      const power = voicePower(sound.raw);
      // What the tool says itself is nobody's talk.
      if (!toolSpeaks) background.next(power);
      recent.push(sound);
      if (recent.length > Math.ceil(speech.preRollMs / stepMs)) recent.shift();
      if (utterance !== undefined) await goOn(utterance, sound, now.speech);
      else if (now.begins && asked !== undefined) await begin(asked);
      const heldMs = followedMs - (heldCall?.atMs ?? followedMs);
      if (heldMs >= (utterance === undefined ? noticedLateMs : longestHeldMs)) callHeld();
      meter.next(sound.raw, utterance !== undefined);
    }
  }

  async function begin(question: Question<Prepared>): Promise<void> {
    const fromMs = followedMs - stepMs * recent.length;
    const underTool = toolSpeaks || followedMs - toolCeasedMs < noticedLateMs;
    const noticedMs = followedMs;
    const spoken = new SpokenPart();
    utterance = { question, fromMs, noticedMs, underTool, silentMs: 0, spokenUpToMs: noticedMs, spoken };
    decoder.begin(question.prepared, background.levelDbfs(recent.length));
    for (const sound of recent) await decode(utterance, sound);
  }

  async function decode(current: Utterance<Prepared>, sound: Sound): Promise<Progress> {
    if (voiceIn) current.spoken.next(sound);
    const progress = await decoder.hear(sound, current.silentMs);
    if (progress.stop !== undefined) stopIn(current, progress.stop);
    return progress;
  }

  async function goOn(current: Utterance<Prepared>, sound: Sound, speaking: boolean): Promise<void> {
    current.silentMs = speaking ? 0 : current.silentMs + stepMs;
    if (stops === undefined ? speaking : sound.moments.some(hasPhone)) current.spokenUpToMs = followedMs;
    const progress = await decode(current, sound);
    const tooLong = followedMs - current.fromMs >= longestUtteranceMs;
    if (current.silentMs < patienceMs(progress) && progress.over !== true && !tooLong) return;
    const verdict = await decoder.end();
    // Over first, so that whoever is told of it finds the ear between utterances.
    utterance = undefined;
    // What belonged to this one is no beginning of the next; where nothing was heard yet, it may be.
    if (verdict.kind !== 'nothing') recent.length = 0;
    if (verdict.kind === 'stop') stopIn(current, verdict.text);
    if (verdict.kind === 'taken' && answers(current, verdict.text)) heldCall = undefined;
    callHeld();
    tellVoice(current);
    if (verdict.kind !== 'stop')
      conclude(current, tooLong ? { kind: 'unclear', text: '', reason: 'tooLong' } : verdict);
  }

  /** Whether it is an answer to what is still asked. */
  const answers = ({ question, underTool }: Utterance<Prepared>, text: string) => {
    const kind = question.matcher.meaningOf(text)?.kind;
    return !underTool && question === asked && (kind === 'reply' || kind === 'number');
  };

  const stoppedIn = ({ fromMs }: Utterance<Prepared>) =>
    Math.max(lastStopMs, lastCallMs) >= fromMs - sameStopMs;

  /** A stop that the decoder heard: once for an utterance, whoever hears it first. */
  function stopIn(current: Utterance<Prepared>, text: string): void {
    if (!stoppedIn(current)) stop(text, followedMs);
  }

  /** The tool's own voice in it would be taken for somebody's. */
  function tellVoice(ended: Utterance<Prepared>): void {
    const voice = ended.underTool || closed ? null : voiceIn?.(ended.spoken.samples());
    if (voice) onVoice({ voice, stopped: stoppedIn(ended) });
  }

  let lastNumberMs = Number.NEGATIVE_INFINITY;

  /** What was said means, where it is no more of a number that was over too soon. */
  function meaningIn(ended: Utterance<Prepared>, text: string): Meaning | undefined {
    const meaning = ended.question.matcher.meaningOf(text);
    if (meaning?.kind !== 'number') return meaning;
    const isRest = ended.noticedMs - lastNumberMs < restOfNumberMs;
    lastNumberMs = ended.spokenUpToMs;
    return isRest ? undefined : meaning;
  }

  /** The one place in which anything but a stop is reported. */
  function conclude(ended: Utterance<Prepared>, verdict: Exclude<Verdict, { kind: 'stop' }>): void {
    if (verdict.kind === 'nothing') return;
    const meaning = meaningIn(ended, verdict.text);
    if (ended.underTool || stoppedIn(ended)) return;
    if (verdict.kind === 'unclear') {
      report(verdict);
      return;
    }
    const { text, certainty } = verdict;
    if (meaning?.kind === 'stop')
      meaning.calls === undefined ? stop(text, followedMs) : call(callFor(text, followedMs), followedMs);
    else if (meaning === undefined || ended.question !== asked)
      report({ kind: 'unclear', text, reason: 'outOfGrammar' });
    else report({ ...meaning, text, confidence: certainty });
  }

  let sensing: Promise<unknown> = Promise.resolve();
  let following: Promise<unknown> = Promise.resolve();
  const whateverComesOfIt = (work: Promise<unknown>) => work.catch(() => {});

  return {
    listen(grammar: Grammar) {
      const fingerprint = JSON.stringify(grammar);
      if (closed || fingerprint === asked?.fingerprint) return;
      const matcher = matcherOf(grammar);
      const { calls = [] } = grammar;
      const callsOf = matcherOf({
        key: grammar.key,
        language: grammar.language ?? 'en',
        stop: [],
        replies: [],
        calls,
      });
      asked = { fingerprint, prepared: decoder.prepare(grammar, matcher), matcher, callsOf };
      stops?.spotter.listen(grammar.stop);
      stops?.calls?.listen(calls.flatMap(({ wordings }) => wordings));
    },
    onlyStop(active) {
      if (toolSpeaks && !active) toolCeasedMs = followedMs;
      toolSpeaks = active;
      if (active && utterance !== undefined) utterance.underTool = true;
    },
    onHeard(handler) {
      onHeard = handler;
    },
    onLevel(handler) {
      onLevel = handler;
    },
    onVoice(handler) {
      onVoice = handler;
    },
    hear(block) {
      if (closed) return Promise.resolve();
      const sensed = sensing.then(() => sense(block));
      sensing = whateverComesOfIt(sensed);
      const earlier = following;
      const done = sensed.then(async sounds => {
        await earlier;
        if (closed) return;
        await follow(sounds);
        if (!closed) onLevel(meter.report(block, utterance !== undefined));
      });
      following = whateverComesOfIt(done);
      return done;
    },
    close() {
      if (closed) return;
      closed = true;
      void following.then(() => {
        decoder.close();
        frontEnd.close();
      });
    },
  };
}
