import { english } from '../../prompts/en/index.ts';
import type { Grammar, SoundRecognizer } from '../../src/voice/ports.ts';
import { hearScenes, type SceneResult } from './accuracy.ts';
import { noiseLoop, type SpeakerSet } from './material.ts';
import { type Saying, sceneOf } from './scene.ts';

const readBackGrammar: Grammar = {
  key: 'readBack',
  stop: english.stopWordings,
  replies: [
    { id: 'yes', wordings: english.replies.yes },
    { id: 'no', wordings: english.replies.no },
  ],
};

export interface ReadBackResult {
  /** Values and replies that were heard wrongly, and read back to their speaker. */
  readonly readBack: number;
  /** The speaker objected and was taken to agree: a wrong value accepted. */
  readonly acceptedAllTheSame: number;
}

/** Everything that was heard wrongly is read back; its speaker objects in the same noise, in each of the wordings. */
export async function measureReadBack(
  results: readonly SceneResult[],
  set: SpeakerSet,
  ear: SoundRecognizer,
): Promise<ReadBackResult> {
  const objections = readBackGrammar.replies
    .filter(({ id }) => id === 'no')
    .flatMap(({ wordings }) => wordings)
    .map((says): Saying => ({ grammar: readBackGrammar, says, means: { kind: 'reply', id: 'no' } }));
  const wrong = results.filter(({ taken }) => taken.wrong > 0);
  const scenes = wrong.map(({ scene, taken }) =>
    sceneOf(
      // One objection for each wrong value, by turns in another wording.
      Array.from({ length: taken.wrong }, (_, i) => objections[i % objections.length]).filter(
        saying => saying !== undefined,
      ),
      {
        voice: scene.voice,
        microphone: 'good',
        ...(scene.noise === 'none'
          ? {}
          : { noise: { kind: scene.noise, loop: noiseLoop(scene.noise, set), snrDb: scene.snrDb } }),
      },
    ),
  );
  const answers = (await hearScenes(scenes, ear)).flatMap(({ outcomes }) => outcomes);
  return {
    readBack: answers.length,
    acceptedAllTheSame: answers.filter(({ reports }) =>
      reports.some(({ heard }) => heard.kind === 'reply' && heard.id === 'yes'),
    ).length,
  };
}
