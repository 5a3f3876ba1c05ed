import { takenAs } from '../count.ts';
import type { Cut, Peer } from './cuts.ts';
import { type FreeText, textsOf } from './free-text.ts';
import { type Nearest, nearestIn } from './nearest.ts';

/** Phones wrong for each phone of the text, from exactly to anything that has a nearest phrase. */
const farthests: readonly number[] = [0, 0.1, 0.2, 0.25, 0.34, 0.4, 0.5, 0.6, 0.75, 1];

const within =
  (farthest: number) =>
  ({ meaning, distance }: Nearest) =>
    distance <= farthest ? meaning : undefined;

async function nearestOf(peer: FreeText, cuts: readonly Cut[]): Promise<readonly Nearest[]> {
  const texts = await textsOf(
    peer,
    cuts.map(({ samples }) => samples),
  );
  return cuts.map(({ utterance }, i) => nearestIn(utterance.grammar, texts[i] ?? ''));
}

/** How far a phrase may be: as far as most is right beyond what is wrong, on cuts of the development set. */
export function farthestFor(cuts: readonly Cut[], nearest: readonly Nearest[]): number {
  const worth = (farthest: number) =>
    cuts.reduce((sum, { utterance }, i) => {
      const taken = takenAs(utterance.means, nearest[i] && within(farthest)(nearest[i]));
      return sum + (taken === 'right' ? 1 : taken === 'unclear' ? 0 : -1);
    }, 0);
  return farthests.reduce((best, each) => (worth(each) > worth(best) ? each : best));
}

/** A recognizer of free text, taken for the nearest phrase of the grammar. */
export async function byNearest(
  peer: FreeText,
  development: readonly Cut[],
): Promise<Peer & { readonly farthest: number }> {
  const farthest = farthestFor(development, await nearestOf(peer, development));
  return {
    name: peer.name,
    farthest,
    hear: async cuts => (await nearestOf(peer, cuts)).map(within(farthest)),
  };
}
