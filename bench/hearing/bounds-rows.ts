import { blocksOf } from '../../src/voice/audio/blocks.ts';
import { isBackground } from '../../src/voice/decoders/network/bounds.ts';
import type { Decision } from '../../src/voice/decoders/network/decoder.ts';
import type { Features } from '../../src/voice/decoders/network/features.ts';
import type { NearSpeechSettings } from '../../src/voice/ear/near-speech.ts';
import { matcherOf } from '../../src/voice/meaning.ts';
import { speechRateHz } from '../../src/voice/resample.ts';
import { type Level, scenesAt } from './accuracy.ts';
import { isMeant } from './count.ts';
import { speakerSets, spread, startReplies, talkAgainst } from './material.ts';
import { clipScenes, machineLoops, type SaidClip, spokenClip } from './people/clip-scenes.ts';
import { clipsOf } from './people/folders.ts';
import { materialOf } from './people/rows.ts';
import { earRemembering, remember } from './remembered.ts';
import type { Placed, Scene } from './scene.ts';

/**
 * The likeliest wording of an utterance, what was known of it, and whether it was what was said; of those that are decided
 * by their certainty alone, not of background nor of stops.
 */
export interface Row {
  /** Made voices, or a kind of what people said. */
  readonly of: string;
  readonly level: Level;
  readonly noise: string;
  readonly speaker: string;
  readonly says: string;
  /** Nothing was asked for that this could answer. */
  readonly talk: boolean;
  readonly text: string;
  readonly right: boolean;
  /** None where nothing was noticed of it that is decided so. */
  readonly features: Features | null;
}

export const levels: readonly Level[] = ['clean', 20, 10, 5, 0];

/** What was decided while each utterance of a scene was heard. */
async function decisionsIn(
  scene: Scene,
  near: NearSpeechSettings,
): Promise<readonly { readonly utterance: Placed; readonly decisions: readonly Decision[] }[]> {
  let decisions: Decision[] = [];
  const ear = earRemembering(remember(scene.samples), {
    near,
    onDecision: decision => decisions.push(decision),
  });
  const noted = [];
  for (const [i, utterance] of scene.utterances.entries()) {
    ear.listen(utterance.grammar);
    decisions = [];
    const samples = scene.samples.subarray(i === 0 ? 0 : utterance.fromSample, utterance.toSample);
    for (const block of blocksOf({ samples, sampleRateHz: speechRateHz })) await ear.hear(block);
    noted.push({ utterance, decisions });
  }
  ear.close();
  return noted;
}

async function rowsOf(
  of: string,
  scenes: readonly Scene[],
  level: Level,
  near: NearSpeechSettings,
): Promise<readonly Row[]> {
  const rows: Row[] = [];
  for (const scene of scenes) {
    for (const { utterance, decisions } of await decisionsIn(scene, near)) {
      const { says, means, grammar, speaker = scene.voice } = utterance;
      const common = { of, level, noise: scene.noise, speaker, says, talk: means === undefined };
      const found = decisions.flatMap(({ text = '', features }) => {
        const meaning = matcherOf(grammar).meaningOf(text);
        if (features === undefined || isBackground(features) || meaning?.kind === 'stop') return [];
        return [{ text, right: meaning !== undefined && isMeant(means, meaning), features }];
      });
      if (found.length === 0) rows.push({ ...common, text: '', right: false, features: null });
      for (const each of found) rows.push({ ...common, ...each });
    }
  }
  return rows;
}

/** What people say, each clip at two of the levels by turns. */
export async function rowsOfPeople(
  folders: readonly string[],
  near: NearSpeechSettings,
  keep: (rows: readonly Row[]) => void,
  only: readonly string[] = [],
): Promise<void> {
  const clips = clipsOf(folders).filter(({ split }) => split === 'dev');
  const { digits, numbers, words, otherWords, talk } = materialOf(clips, await startReplies());
  const loops = machineLoops(clips);
  const kinds: readonly (readonly [string, readonly SaidClip[]])[] = [
    ['digits', digits],
    ['numbers', [...numbers, ...numbers]],
    ['words', words],
    ['other words', otherWords.filter((_, i) => i % 2 === 0)],
    ['talk', talk.filter((_, i) => i % 2 === 0)],
  ];
  for (const [of, said] of kinds) {
    if (only.length > 0 && !only.includes(of)) continue;
    for (const [k, level] of levels.entries()) {
      const part = said.filter((_, i) => i % levels.length === k || (i + 2) % levels.length === k);
      const some = of === 'talk' ? part.filter((_, i) => i % 2 === 0) : part;
      keep(await rowsOf(of, clipScenes(some.map(spokenClip), level, loops), level, near));
    }
  }
}

export async function rowsOfMadeVoices(
  count: number,
  near: NearSpeechSettings,
  keep: (rows: readonly Row[]) => void,
): Promise<void> {
  const all = await startReplies();
  for (const level of levels) {
    const scenes = scenesAt(level, spread(all, count), speakerSets.development);
    const talk = scenesAt(level, spread(talkAgainst(all), Math.ceil(count / 2)), speakerSets.development);
    keep([...(await rowsOf('made', scenes, level, near)), ...(await rowsOf('made', talk, level, near))]);
  }
}
