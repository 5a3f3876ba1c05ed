import { hearScenes, type Level, scenesAt } from '../accuracy.ts';
import { nothingTaken, sum, type Taken, takenAs } from '../count.ts';
import type { Listener } from '../listener.ts';
import { type SpeakerSet, speakerSets, spread, startReplies } from '../material.ts';
import { clipScenes, type SaidClip, spokenClip } from '../people/clip-scenes.ts';
import { atMost, type PreparedPeople } from '../people/prepare.ts';
import { byNearest } from './by-nearest.ts';
import { type Cut, cutsOf, type Peer, type Said } from './cuts.ts';
import type { FreeText } from './free-text.ts';
import { nativeInstalled, nativePocketSphinx } from './native.ts';

export interface PeerRow {
  readonly of: string;
  readonly level: Level;
  readonly system: string;
  readonly taken: Taken;
  readonly speakers: number;
}

export interface Peers {
  readonly rows: readonly PeerRow[];
  /** Of recognizers of free text: how far from what they wrote a phrase may be, in phones for each phone. */
  readonly farthest: Readonly<Record<string, number>>;
}

export interface PeerSize {
  readonly levels: readonly Level[];
  /** Utterances of each kind at each level, at most. */
  readonly utterances: number;
  /** At most: the fewer, the more noises they are heard in. */
  readonly utterancesOfScene?: number;
}

const kindsOf = ({ material }: PreparedPeople): readonly (readonly [string, readonly SaidClip[]])[] => [
  ['digits of people, one at a time', material.digits],
  ['yes, no and other words of people', material.words],
  ['numbers and figures of people', material.numbers],
];

/** Level by level, so that whoever breaks off has all kinds of the first. */
async function saidBy(
  people: PreparedPeople,
  set: SpeakerSet,
  { levels, utterances, utterancesOfScene }: PeerSize,
): Promise<readonly Said[]> {
  const kinds = kindsOf(people).map(
    ([of, clips]) => [of, atMost(clips, utterances).map(spokenClip)] as const,
  );
  const replies = spread(await startReplies(), Math.ceil(utterances / set.voices.length));
  return levels.flatMap(level => [
    ...kinds.map(([of, spoken]) => ({
      of,
      level,
      scenes: clipScenes(spoken, level, people.loops, utterancesOfScene),
    })),
    { of: 'replies of made voices', level, scenes: scenesAt(level, replies, set) },
  ]);
}

async function hearPeer(peer: Peer, cuts: readonly Cut[]): Promise<Taken> {
  const taken = nothingTaken();
  for (const [i, meaning] of (await peer.hear(cuts)).entries())
    taken[takenAs(cuts[i]?.utterance.means, meaning)]++;
  return taken;
}

/**
 * Other recognizers on the same sound as our own ear: native PocketSphinx where it is installed, and recognizers of free
 * text, taken for the nearest phrase of the grammar; how near it has to be is chosen on the development set.
 * @param people those of the set, and those of the development set
 */
export async function measurePeers(
  people: { readonly measured: PreparedPeople; readonly development: PreparedPeople },
  set: SpeakerSet,
  size: PeerSize,
  freeText: readonly FreeText[],
  listener: Listener,
  keep: (peers: Peers) => void,
): Promise<void> {
  const chosenOn = { levels: [10], utterances: Math.ceil(size.utterances / 2) };
  const development = (await saidBy(people.development, speakerSets.development, chosenOn)).flatMap(
    ({ scenes }) => cutsOf(scenes),
  );
  const said = await saidBy(people.measured, set, size);
  const named = [];
  for (const peer of freeText) named.push(await byNearest(peer, development));
  const farthest = Object.fromEntries(named.map(({ name, farthest }) => [name, farthest]));
  const peers: readonly Peer[] = [...(nativeInstalled ? [nativePocketSphinx] : []), ...named];
  const rows: PeerRow[] = [];
  for (const { of, level, scenes } of said) {
    const cuts = cutsOf(scenes);
    const speakers = new Set(
      scenes.flatMap(({ voice, utterances }) => utterances.map(({ speaker = voice }) => speaker)),
    ).size;
    const ours = await hearScenes(scenes, listener);
    rows.push({ of, level, system: 'first-fire', speakers, taken: sum(ours.map(({ taken }) => taken)) });
    for (const peer of peers) {
      rows.push({ of, level, system: peer.name, speakers, taken: await hearPeer(peer, cuts) });
    }
    keep({ rows, farthest });
  }
}
