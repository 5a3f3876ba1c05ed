import { speechRateHz } from '../../src/voice/resample.ts';
import { hearScenes, type Level, scenesAt } from './accuracy.ts';
import { confirming } from './confirming.ts';
import { isControl } from './controls.ts';
import type { Listener } from './listener.ts';
import { grammarAt, type SpeakerSet, spread, talkAgainst } from './material.ts';
import { noiseAtSnr } from './mix.ts';
import { type NoiseKind, noiseOf } from './noises.ts';
import type { Outcome } from './play.ts';
import type { Saying, Scene } from './scene.ts';

/** What was taken for an answer although nobody gave one. */
export interface FalseAccepts {
  readonly hours: number;
  /** Replies and numbers that the procedure goes on from (after a read-back where it matters). */
  readonly gating: number;
  /** Of them, what was read back and taken to be agreed to; missing where nothing was read back. */
  readonly confirmed?: number;
  readonly controls: number;
  readonly stops: number;
  readonly examples: readonly string[];
}

const sceneHours = (scenes: readonly Scene[]) =>
  scenes.reduce((sum, { samples }) => sum + samples.length, 0) / speechRateHz / 3600;

/** What of talk or noise was taken for an answer. */
function accepted(scenes: readonly Scene[], outcomes: readonly Outcome[]): FalseAccepts {
  const heard = outcomes.flatMap(({ utterance, reports }) =>
    reports.map(report => ({ heard: report.heard, says: utterance.says })),
  );
  const counted = heard.filter(({ heard: { kind } }) => kind !== 'unclear');
  const stops = counted.filter(({ heard: { kind } }) => kind === 'stop').length;
  const controls = counted.filter(({ heard: each }) => each.kind === 'reply' && isControl(each.id)).length;
  return {
    hours: sceneHours(scenes),
    gating: counted.length - stops - controls,
    controls,
    stops,
    examples: counted.map(({ heard: each, says }) => `"${says}" as ${each.kind} "${each.text}"`),
  };
}

/** Talk, one sentence after the other with hardly a pause, while states wait for their replies. */
export async function measureTalk(
  level: Level,
  sentences: number,
  replies: readonly Saying[],
  set: SpeakerSet,
  listener: Listener,
): Promise<FalseAccepts> {
  const scenes = scenesAt(level, spread(talkAgainst(replies), sentences), set);
  return acceptedBy(scenes, listener);
}

/** What of talk or noise is taken for an answer by an ear in a session, which reads back what it took. */
export async function acceptedBy(scenes: readonly Scene[], listener: Listener): Promise<FalseAccepts> {
  let confirmed = 0;
  const reading = confirming(listener, () => {
    confirmed += 1;
  });
  const outcomes = (await hearScenes(scenes, reading)).flatMap(result => result.outcomes);
  return { ...accepted(scenes, outcomes), confirmed };
}

/** Noise alone, as loud as it is at 5 dB, never the same twice, while one state after the other waits for its reply. */
export async function measureNoise(
  kinds: readonly NoiseKind[],
  secondsOfEach: number,
  replies: readonly Saying[],
  set: SpeakerSet,
  listener: Listener,
): Promise<FalseAccepts> {
  const pieceSamples = 10 * speechRateHz;
  const scenes = kinds.map((kind): Scene => {
    const pieces = Math.ceil(secondsOfEach / 10);
    // No loop: what is taken for an answer once would be again each time it comes round.
    const noise = noiseOf(kind, pieces * 10, set.seed, set.voices);
    return {
      voice: '',
      noise: kind,
      snrDb: 5,
      samples: noiseAtSnr(noise, 5),
      utterances: Array.from({ length: pieces }, (_, i) => ({
        grammar: grammarAt(replies, i * 5),
        says: `noise: ${kind}`,
        means: undefined,
        fromSample: i * pieceSamples,
        toSample: (i + 1) * pieceSamples,
        speechEndMs: 0,
      })),
    };
  });
  return acceptedBy(scenes, listener);
}
