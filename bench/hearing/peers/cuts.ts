import type { Meaning } from '../../../src/voice/meaning.ts';
import type { Level } from '../accuracy.ts';
import type { Placed, Scene } from '../scene.ts';

/** One utterance cut out of a scene: other recognizers are told where each lies, which our own ear has to find out. */
export interface Cut {
  readonly utterance: Placed;
  readonly samples: Float32Array;
}

/** What is said at one level, by one kind of speaker. */
export interface Said {
  readonly of: string;
  readonly level: Level;
  readonly scenes: readonly Scene[];
}

/** Another recognizer. */
export interface Peer {
  readonly name: string;
  /** What it takes each cut for, in the grammar of its utterance; undefined where it would have to be asked again. */
  hear(cuts: readonly Cut[]): Promise<readonly (Meaning | undefined)[]>;
}

export const cutsOf = (scenes: readonly Scene[]): readonly Cut[] =>
  scenes.flatMap(({ samples, utterances }) =>
    utterances.map(utterance => ({
      utterance,
      samples: samples.subarray(utterance.fromSample, utterance.toSample),
    })),
  );
