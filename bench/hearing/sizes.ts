import type { Level } from './accuracy.ts';
import type { PeerSize } from './peers/measure.ts';

/** How much is said: the more, the surer the figures, and the longer it takes. */
export interface Size {
  readonly name: string;
  /** Different wordings that each voice says at each level; there are about a hundred. */
  readonly replies: number;
  readonly levels: readonly Level[];
  readonly stopLevels: readonly Level[];
  readonly talkLevels: readonly Level[];
  /** Sentences of talk that each voice says at each level. */
  readonly talkSentences: number;
  readonly noiseSecondsOfEach: number;
  readonly microphones: boolean;
  readonly humans: boolean;
  /** Clips of people of each kind, at most; sentences half as many, and stops within them a third. */
  readonly clipsOfPeople: number;
  readonly levelsOfNumbers: readonly Level[];
  readonly levelsOfWords: readonly Level[];
  readonly stopLevelsOfPeople: readonly Level[];
  readonly talkLevelsOfPeople: readonly Level[];
  readonly peers: PeerSize;
}

const levels: readonly Level[] = ['clean', 20, 10, 5, 0];

export const sizes: Readonly<Record<'quick' | 'sample' | 'full', Size>> = {
  quick: {
    name: 'quick',
    replies: 12,
    levels: ['clean', 10, 5, 20, 0],
    stopLevels: [10],
    talkLevels: [15],
    talkSentences: 30,
    noiseSecondsOfEach: 20,
    microphones: false,
    humans: false,
    clipsOfPeople: 60,
    levelsOfNumbers: ['clean', 10],
    levelsOfWords: ['clean', 10],
    stopLevelsOfPeople: ['clean', 10],
    talkLevelsOfPeople: ['clean'],
    peers: { levels: [10], utterances: 12, utterancesOfScene: 3 },
  },
  sample: {
    name: 'sample',
    replies: 24,
    levels: ['clean', 10, 0],
    stopLevels: ['clean', 10, 0],
    talkLevels: ['clean', 10],
    talkSentences: 60,
    noiseSecondsOfEach: 60,
    microphones: false,
    humans: true,
    clipsOfPeople: 96,
    levelsOfNumbers: [10, 5],
    levelsOfWords: [10],
    stopLevelsOfPeople: [10, 0, 'clean'],
    talkLevelsOfPeople: ['clean', 10],
    peers: { levels: [10, 5], utterances: 20, utterancesOfScene: 3 },
  },
  full: {
    name: 'full',
    replies: 1_000,
    levels,
    stopLevels: ['clean', 10, 0],
    talkLevels: ['clean', 10],
    talkSentences: 1_000,
    noiseSecondsOfEach: 300,
    microphones: true,
    humans: true,
    clipsOfPeople: 320,
    levelsOfNumbers: ['clean', 20, 10, 5],
    levelsOfWords: ['clean', 10],
    stopLevelsOfPeople: ['clean', 10, 0],
    talkLevelsOfPeople: ['clean', 10],
    peers: { levels: [10, 5], utterances: 40, utterancesOfScene: 3 },
  },
};
