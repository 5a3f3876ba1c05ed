import type { Survivor } from './figures.ts';

/** A mutant that changes nothing anybody could observe, by the text of its line, which moves with the code. */
interface Equivalent {
  readonly file: string;
  readonly text: string;
  /** Only the mutants of that line with this replacement; all of its survivors where it is left out. */
  readonly replacement?: string;
  readonly why: string;
}

const EQUIVALENTS: readonly Equivalent[] = [];

/** Why a survivor is no hole in the tests; undefined for one that is. */
export const whyEquivalent = (file: string, { text, replacement }: Survivor): string | undefined =>
  EQUIVALENTS.find(
    each =>
      each.file === file &&
      each.text === text &&
      (each.replacement === undefined || each.replacement === replacement),
  )?.why;
