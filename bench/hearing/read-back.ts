import { english } from '../../prompts/en/index.ts';
import type { Grammar, SoundRecognizer } from '../../src/voice/ports.ts';
import { hearScenes, scenesAt } from './accuracy.ts';
import type { SpeakerSet } from './material.ts';
import { noiseKinds } from './noises.ts';
import type { Saying } from './scene.ts';

const readBackGrammar: Grammar = {
  key: 'readBack',
  stop: english.stopWordings,
  replies: [
    { id: 'yes', wordings: english.replies.yes },
    { id: 'no', wordings: english.replies.no },
  ],
};

export interface ReadBackResult {
  /** Times that something was read back, and its speaker objected. */
  readonly objections: number;
  readonly heard: number;
  /** The speaker was taken to agree: something wrong was accepted. */
  readonly takenForAgreement: number;
}

/** What is read back wrong is objected to by every voice, in each of the wordings and each noise. */
export async function measureReadBack(
  level: number,
  set: SpeakerSet,
  ear: SoundRecognizer,
): Promise<ReadBackResult> {
  const objections = english.replies.no.map(
    (says): Saying => ({ grammar: readBackGrammar, says, means: { kind: 'reply', id: 'no' } }),
  );
  const scenes = noiseKinds.flatMap(kind => scenesAt(level, objections, set, 'good', [kind]));
  const answers = (await hearScenes(scenes, ear)).flatMap(({ outcomes }) => outcomes);
  const taken = (id: string) =>
    answers.filter(({ reports }) => reports.some(({ heard }) => heard.kind === 'reply' && heard.id === id));
  return { objections: answers.length, heard: taken('no').length, takenForAgreement: taken('yes').length };
}
