import type { Form } from '../number-words/vocabulary.ts';
import { type PrefixTree, prefixTreeOf } from '../prefix-tree.ts';

/** A place in what may be said: the words that may come next, and whether it may be over. Equal places are one object. */
export interface WordPlace {
  readonly id: number;
  readonly mayEnd: boolean;
  readonly next: readonly WordStep[];
}

export interface WordStep {
  readonly word: string;
  readonly to: WordPlace;
}

/** Puts places together from their ends backwards, and keeps each but once, whatever leads to it. */
export class WordGraph {
  private readonly known = new Map<string, WordPlace>();
  /** Where nothing comes any more. */
  readonly end: WordPlace = this.place(true, []);

  place(mayEnd: boolean, steps: readonly WordStep[]): WordPlace {
    const byName = new Map(steps.map(step => [`${step.word}>${step.to.id}`, step]));
    const key = `${mayEnd} ${[...byName.keys()].sort().join(' ')}`;
    const place = this.known.get(key) ?? { id: this.known.size, mayEnd, next: [...byName.values()] };
    this.known.set(key, place);
    return place;
  }

  /** The place in which one may go on as in any of these. */
  either(places: readonly WordPlace[]): WordPlace {
    return this.place(
      places.some(({ mayEnd }) => mayEnd),
      places.flatMap(({ next }) => next),
    );
  }

  /** The forms, and what may follow on each of them. */
  forms(forms: readonly Form[], then: WordPlace = this.end): WordPlace {
    const placeOf = (tree: PrefixTree): WordPlace => {
      const branches = [...tree.next.values()].map(({ token, tree: rest }): WordPlace => {
        const to = placeOf(rest);
        const spoken = token.filter(word => word !== '').map(word => ({ word, to }));
        const step = this.place(false, spoken);
        // A word that may be left out: what comes after it may come at once.
        return spoken.length < token.length ? this.either([step, to]) : step;
      });
      return this.either(tree.ends ? [then, ...branches] : branches);
    };
    return placeOf(prefixTreeOf(forms));
  }

  /** The wordings, normalized, and what may follow on each of them. */
  wordings(wordings: readonly string[], then: WordPlace = this.end): WordPlace {
    return this.forms(
      wordings.map(wording => wording.split(' ').map(word => [word])),
      then,
    );
  }
}
