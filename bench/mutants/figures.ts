import { existsSync, readFileSync, writeFileSync } from 'node:fs';
import { z } from 'zod';

const FIGURES = new URL('../../docs/mutants.json', import.meta.url);

const survivorSchema = z.object({
  line: z.number().int().positive(),
  /** The text of that line in the source, without the space around it. */
  text: z.string(),
  mutator: z.string(),
  replacement: z.string(),
  status: z.enum(['survived', 'no coverage']),
});

const fileSchema = z.object({
  killed: z.number().int().nonnegative(),
  timedOut: z.number().int().nonnegative(),
  survivors: z.array(survivorSchema),
});

const figuresSchema = z.record(z.string(), fileSchema);

/** A mutant that no test noticed, and where. */
export type Survivor = z.infer<typeof survivorSchema>;

/** What became of the mutants of one source file. */
export type FileFigures = z.infer<typeof fileSchema>;

/** By source file, those that were measured only. */
export type Figures = z.infer<typeof figuresSchema>;

/** The figures of the runs before. Throws on a file that is not such figures. */
export const readFigures = (): Figures =>
  existsSync(FIGURES) ? figuresSchema.parse(JSON.parse(readFileSync(FIGURES, 'utf8'))) : {};

/** Keeps the figures of files that are still there, in order of their names, so that a change of one is seen as one. */
export function writeFigures(figures: Figures): void {
  const there = Object.entries(figures).filter(([file]) => existsSync(file));
  const inOrder = Object.fromEntries(there.toSorted(([a], [b]) => (a < b ? -1 : 1)));
  writeFileSync(FIGURES, `${JSON.stringify(inOrder, undefined, 2)}\n`);
}
