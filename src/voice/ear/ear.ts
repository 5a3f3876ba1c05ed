import { FrameBuffer } from '../frame-buffer.ts';
import type { FrontEnd } from '../front-end.ts';
import type { Meaning } from '../meaning.ts';
import type { EarLevel, Grammar, Heard, Pcm, SoundRecognizer, VoiceHeard } from '../ports.ts';
import { speechRateHz } from '../resample.ts';
import { Background } from './background.ts';
import type { Decoder, Progress, Verdict } from './decoder.ts';
import { HeldCalls, isCall, sameCallMs } from './held-calls.ts';
import { type HearingNetwork, hasPhone } from './moment.ts';
import { NoiseMeter } from './noise-meter.ts';
import { longestUtteranceMs, patienceFor, usualSilenceMs } from './patience.ts';
import { fingerprintOf, type Question, questionOf } from './question.ts';
import { type Sound, stepLength, stepMs } from './sound.ts';
import type { SpeechDetector } from './speech-detector.ts';
import { SpokenPart } from './spoken-part.ts';
import type { StopSpotter } from './stop-spotter.ts';
import { isOfSomebodyNear } from './verdict.ts';
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

/** What one block has become. */
interface Sensed {
  /** When it began. */
  readonly fromMs: number;
  readonly sounds: readonly Sound[];
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

  const held = new HeldCalls();

  /** It is held, since it may stand in an answer; while the tool speaks nothing answers. */
  function spotted(text: string): void {
    const meaning = asked?.callsOf.meaningOf(text);
    if (isCall(meaning)) held.hold({ ...meaning, text }, sensedMs);
    if (toolSpeaks) release();
  }

  /** No answer has come of what was spotted up to a moment. */
  function release(upToMs?: number): void {
    held.release(upToMs).forEach(report);
  }

  async function sense(block: Pcm): Promise<Sensed> {
    const { raw, heard } = await frontEnd.next(block);
    if (closed) return { fromMs: sensedMs, sounds: [] };
    const fromMs = sensedMs;
    const heardSteps = steps.heard.next(heard);
    const sounds = steps.raw.next(raw).map((step, i) => {
      sensedMs += stepMs;
      const moments = stops?.network.next(step) ?? [];
      for (const moment of moments) {
        const text = stops?.spotter.next(moment);
        if (text !== undefined) stop(text, sensedMs);
        const called = stops?.calls?.next(moment);
        if (called !== undefined) spotted(called);
      }
      return { raw: step, heard: heardSteps[i] ?? step, moments };
    });
    // A decoder that hangs or breaks down holds up no call for longer; what is in this block it could not know yet.
    release(fromMs - longestHeldMs);
    return { fromMs, sounds };
  }

  // Everything else.

  let asked: Question<Prepared> | undefined;
  let utterance: Utterance<Prepared> | undefined;
  let toolSpeaks = false;
  let toolCeasedMs = Number.NEGATIVE_INFINITY;
  const recent: Sound[] = [];

  async function follow({ fromMs, sounds }: Sensed): Promise<void> {
    // Where the decoder broke down the rest of a block is lost, but no time.
    followedMs = fromMs;
    for (const sound of sounds) {
      followedMs += stepMs;
      if (utterance === undefined) release(followedMs - noticedLateMs);
      const now = speech.next(sound);
      const power = voicePower(sound.raw);
      // What the tool says itself is nobody's talk.
      if (!toolSpeaks) background.next(power);
      recent.push(sound);
      if (recent.length > Math.ceil(speech.preRollMs / stepMs)) recent.shift();
      if (utterance !== undefined) await goOn(utterance, sound, now.speech);
      else if (now.begins && asked !== undefined) await begin(asked);
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
    // What belonged to this one is no beginning of the next; where nobody near was heard yet, it may be.
    if (isOfSomebodyNear(verdict)) recent.length = 0;
    if (verdict.kind === 'stop') stopIn(current, verdict.text);
    if (verdict.kind === 'taken' && answers(current, verdict.text)) held.answered(current.fromMs, followedMs);
    release(followedMs);
    tellVoice(current);
    if (verdict.kind !== 'stop')
      conclude(current, tooLong ? { kind: 'unclear', text: '', reason: 'tooLong' } : verdict);
  }

  /** Whether it is an answer to what is still asked. */
  const answers = ({ question, underTool }: Utterance<Prepared>, text: string) => {
    const kind = question.matcher.meaningOf(text)?.kind;
    return !underTool && question === asked && (kind === 'reply' || kind === 'number');
  };

  const stoppedIn = ({ fromMs }: Utterance<Prepared>) => lastStopMs >= fromMs - sameStopMs;
  const stoppedOrCalledIn = (current: Utterance<Prepared>) =>
    stoppedIn(current) || held.calledSince(current.fromMs - sameCallMs);

  /** A stop that the decoder heard: once for an utterance, whoever hears it first. */
  function stopIn(current: Utterance<Prepared>, text: string): void {
    if (!stoppedIn(current)) stop(text, followedMs);
  }

  /** The tool's own voice in it would be taken for somebody's. */
  function tellVoice(ended: Utterance<Prepared>): void {
    const voice = ended.underTool || closed ? null : voiceIn?.(ended.spoken.samples());
    if (voice) onVoice({ voice, stopped: stoppedOrCalledIn(ended) });
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
    if (ended.underTool || stoppedOrCalledIn(ended)) return;
    if (verdict.kind === 'unclear') {
      report(verdict);
      return;
    }
    const { text, certainty } = verdict;
    if (isCall(meaning)) {
      held.hold({ ...meaning, text }, followedMs);
      release(followedMs);
    } else if (meaning?.kind === 'stop') stop(text, followedMs);
    else if (meaning === undefined || ended.question !== asked)
      report({ kind: 'unclear', text, reason: 'outOfGrammar' });
    else report({ ...meaning, text, confidence: certainty });
  }

  let sensing: Promise<unknown> = Promise.resolve();
  let following: Promise<unknown> = Promise.resolve();
  const whateverComesOfIt = (work: Promise<unknown>) => work.catch(() => {});

  return {
    listen(grammar: Grammar) {
      if (closed || fingerprintOf(grammar) === asked?.fingerprint) return;
      asked = questionOf(grammar, decoder);
      stops?.spotter.listen(grammar.stop);
      stops?.calls?.listen((grammar.calls ?? []).flatMap(({ wordings }) => wordings));
    },
    onlyStop(active) {
      // They were heard before it spoke.
      if (active && !toolSpeaks) release();
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
