import { spread, startReplies } from '../material.ts';
import type { Saying } from '../scene.ts';
import { machineLoops, type RecordedNoise } from './clip-scenes.ts';
import type { Clip } from './recordings.ts';
import { materialOf, type PeopleMaterial } from './rows.ts';

/** What people are measured with: clips of one split, in states of the procedure, beside machines of the same split. */
export interface PreparedPeople {
  readonly clips: readonly Clip[];
  readonly material: PeopleMaterial;
  readonly loops: readonly RecordedNoise[];
  readonly replies: readonly Saying[];
}

export async function preparePeople(all: readonly Clip[], split: Clip['split']): Promise<PreparedPeople> {
  const clips = all.filter(clip => clip.split === split);
  const replies = await startReplies();
  return { clips, material: materialOf(clips, replies), loops: machineLoops(clips), replies };
}

/** So many of them at most, spread evenly over all. */
export const atMost = <T>(list: readonly T[], most: number): readonly T[] =>
  list.length <= most ? list : spread(list, most);

export const sourcesOf = ({ clips }: PreparedPeople): readonly string[] =>
  [...new Set(clips.map(({ source }) => source))].sort();

export const speakersOf = (sayings: readonly Saying[]): number =>
  new Set(sayings.map(({ speaker }) => speaker)).size;
