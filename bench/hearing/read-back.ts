import { english } from '../../prompts/en/index.ts';
import type { Grammar, Heard } from '../../src/voice/ports.ts';
import { hearScenes, scenesAt } from './accuracy.ts';
import type { Listener } from './listener.ts';
import type { SpeakerSet } from './material.ts';
import { noiseKinds } from './noises.ts';
import type { Saying } from './scene.ts';

/** What is read back is right or wrong. */
export const readBackGrammar: Grammar = {
  key: 'readBack',
  stop: english.stopWordings,
  replies: [
    { id: 'yes', wordings: english.replies.yes },
    { id: 'no', wordings: english.replies.no },
  ],
  agreement: 'yes',
};

const isCounted = ({ kind }: Heard) => kind !== 'unclear';

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
  listener: Listener,
): Promise<ReadBackResult> {
  const objections = english.replies.no.map(
    (says): Saying => ({ grammar: readBackGrammar, says, means: { kind: 'reply', id: 'no' } }),
  );
  const scenes = noiseKinds.flatMap(kind => scenesAt(level, objections, set, 'good', [kind]));
  const answers = (await hearScenes(scenes, listener)).flatMap(({ outcomes }) => outcomes);
  // What comes first decides: after a stop nothing is asked any more.
  const firsts = answers.map(({ reports }) => reports.map(({ heard }) => heard).find(isCounted));
  const taken = (id: string) => firsts.filter(first => first?.kind === 'reply' && first.id === id).length;
  return { objections: answers.length, heard: taken('no'), takenForAgreement: taken('yes') };
}
