import type { Said } from '../../../machines/context.ts';
import type { SessionEvent } from '../../../machines/events.ts';
import { controlsOf, type Moment } from '../../../machines/moment.ts';
import type { Profile } from '../../profile/schema.ts';
import type { Note, Written } from '../../record/vocabulary/index.ts';
import { besideOthers, type PastStarts, unlikeOthers } from './beside-others.ts';
import { FigureReader, mayHoldFigure } from './figures.ts';

/** Holds what a start measures beside the shop's earlier ones, and has what is unlike them told when there is time. */
export class Comparison {
  readonly #figures: FigureReader;
  #past: PastStarts = {};
  #unlike: Said[] = [];

  constructor(profile: Profile) {
    this.#figures = new FigureReader(profile);
  }

  /** The shop's earlier starts, for what is measured from now on. */
  holdBeside(past: PastStarts): void {
    this.#past = past;
  }

  /**
   * Where the figure that a note holds stands among the earlier ones; undefined where it holds none or they are too few.
   * @param atMs session time
   */
  take(note: Note, atMs: number): Written<'besideOthers'> | undefined {
    if (!mayHoldFigure(note)) return undefined;
    const figure = this.#figures.take(note, atMs);
    const standing = figure && besideOthers(figure, this.#past);
    if (!figure || !standing) return undefined;
    this.#unlike.push(...unlikeOthers(figure.figure, figure.value, standing));
    return standing;
  }

  /** What is told after this event: before what is asked next; where seconds count it waits, and a stop leaves it to the report. */
  due({ type }: SessionEvent, moment: Moment): readonly Said[] {
    if (type === 'stop') this.#unlike = [];
    return controlsOf(moment).includes('hold') ? this.#unlike.splice(0) : [];
  }
}
