import bidiFactory from 'bidi-js';

// The package is CommonJS with types written for ES modules: what is imported is the factory itself.
const bidi = (typeof bidiFactory === 'function' ? bidiFactory : Reflect.get(bidiFactory, 'default'))();

/** A stretch of one direction, as it stands in the text; stretches come in the order in which they are drawn. */
interface Run {
  readonly text: string;
  readonly rightToLeft: boolean;
}

const rightToLeftLetter =
  /[\p{Script=Hebrew}\p{Script=Arabic}\p{Script=Syriac}\p{Script=Thaana}\p{Script=Nko}]/u;

/**
 * One line of text as stretches from left to right (Unicode Standard Annex 9).
 * The letters of a right-to-left stretch stay in their logical order: who draws it has to know that.
 */
export function visualRuns(line: string): Run[] {
  if (!rightToLeftLetter.test(line)) return [{ text: line, rightToLeft: false }];
  const embedding = bidi.getEmbeddingLevels(line, 'auto');
  const mirrored = bidi.getMirroredCharactersMap(line, embedding.levels);
  const runs: { text: string; level: number }[] = [];
  for (let index = 0; index < line.length; index += 1) {
    const level = embedding.levels[index] ?? 0;
    const character = mirrored.get(index) ?? line.charAt(index);
    const last = runs.at(-1);
    if (last?.level === level) last.text += character;
    else runs.push({ text: character, level });
  }
  return reordered(runs).map(({ text, level }) =>
    level % 2 === 0
      ? { text, rightToLeft: false }
      : rightToLeftLetter.test(text)
        ? { text, rightToLeft: true }
        : { text: [...text].reverse().join(''), rightToLeft: false },
  );
}

/** Rule L2: from the highest level down to the lowest odd one, each stretch at that level or above is reversed. */
function reordered<T extends { readonly level: number }>(runs: readonly T[]): T[] {
  const highest = runs.reduce((level, run) => Math.max(level, run.level), 0);
  let order = [...runs];
  for (let level = highest; level >= 1; level -= 1) {
    const next: T[] = [];
    let group: T[] = [];
    for (const run of order) {
      if (run.level >= level) {
        group.push(run);
        continue;
      }
      next.push(...group.reverse(), run);
      group = [];
    }
    order = [...next, ...group.reverse()];
  }
  return order;
}
