import { median } from 'simple-statistics';
import { blocksOf } from '../../voice/audio/blocks.ts';
import type { Heard, Pcm } from '../../voice/ports.ts';
import { createEmbeddedRecognizer } from '../../voice/recognizers/embedded.ts';
import { adaptedTo } from '../../voice/speaker-profile/adapted-ear.ts';
import { type Adaptation, shipped } from '../../voice/speaker-profile/profile.ts';
import { type Prompt, type Trial, type Tried, trialOf } from '../../voice/speaker-profile/trial.ts';

/** A prompt, as somebody read it. */
export interface Reading {
  readonly prompt: Prompt;
  readonly sound: Pcm;
}

export interface Levels {
  readonly speechDbfs: number;
  readonly noiseDbfs: number;
  /** Readings in which the microphone ran out of its range. */
  readonly clipped: number;
}

/** Before it the noise is measured; after it the longest silence that ends a reply has to fit. */
const QUIET_BEFORE_S = 1;
const QUIET_AFTER_S = 0.6;

const middle = (levels: readonly number[]) => (levels.length === 0 ? Number.NaN : median([...levels]));

/** Enough of a quiet room around a reading that it can be told from it. */
function withRoom({ samples, sampleRateHz }: Pcm): Pcm {
  const before = Math.round(QUIET_BEFORE_S * sampleRateHz);
  const after = Math.round(QUIET_AFTER_S * sampleRateHz);
  const all = new Float32Array(before + samples.length + after);
  let state = 1;
  for (let i = 0; i < all.length; i += 1) {
    state = (Math.imul(state, 1_664_525) + 1_013_904_223) >>> 0;
    all[i] = (state / 2 ** 31 - 1) / 32_768;
  }
  all.set(samples, before);
  return { samples: all, sampleRateHz };
}

/** Hears readings with one setting, and measures them on the way. The room after each is long enough to end it. */
async function hearAll(adaptation: Adaptation, readings: readonly Reading[]) {
  const { trailingSilenceMs } = adaptation;
  const inner = await createEmbeddedRecognizer({ trailingSilenceMs });
  // The certainty is kept as it is: which bound to draw is decided afterwards.
  const ear = adaptedTo({ ...adaptation, leastCertainty: shipped.leastCertainty }, inner);
  const trials: Trial[] = [];
  const [speech, noise]: [number[], number[]] = [[], []];
  let clipped = 0;
  for (const { prompt, sound } of readings) {
    const heard: Heard[] = [];
    let clips = false;
    let [speechDbfs, noiseDbfs] = [Number.NaN, Number.NaN];
    ear.onHeard(each => heard.push(each));
    ear.onLevel(level => {
      clips ||= level.clipping;
      noiseDbfs = level.noiseDbfs ?? noiseDbfs;
      speechDbfs = level.utterance?.speechDbfs ?? speechDbfs;
    });
    ear.listen(prompt.grammar);
    for (const block of blocksOf(withRoom(sound))) await ear.hear(block);
    trials.push(trialOf(prompt, heard));
    if (Number.isFinite(speechDbfs)) speech.push(speechDbfs);
    if (Number.isFinite(noiseDbfs)) noise.push(noiseDbfs);
    if (clips) clipped += 1;
  }
  ear.close();
  return { trials, levels: { speechDbfs: middle(speech), noiseDbfs: middle(noise), clipped } };
}

/** How one setting hears the readings that are chosen on, and those that are held out. */
export async function tryOut(
  adaptation: Adaptation,
  training: readonly Reading[],
  heldOut: readonly Reading[],
): Promise<Tried & { readonly levels: Levels }> {
  const { trials, levels } = await hearAll(adaptation, [...training, ...heldOut]);
  return {
    adaptation,
    training: trials.slice(0, training.length),
    heldOut: trials.slice(training.length),
    levels,
  };
}
