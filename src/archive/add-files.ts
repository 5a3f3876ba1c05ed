import { readdir, stat } from 'node:fs/promises';
import { join } from 'node:path';
import type { Archive } from './archive.ts';
import { ArchiveError } from './archive-error.ts';
import type { Intake, IntakeResult } from './intake.ts';
import { takeInAll } from './intake-pool.ts';
import type { Decision } from './versions.ts';

/** What became of one file. */
export type Added =
  | { readonly kind: 'refused'; readonly source: string; readonly sentence: string }
  | {
      readonly kind: Decision['kind'];
      readonly source: string;
      readonly intake: Intake;
      readonly decision: Decision;
    };

/** Records that become one transaction: a power loss costs no more than these, and they are only read again. */
const TOGETHER = 200;

/** The most record bytes held in memory for one transaction. */
const TOGETHER_BYTES = 64e6;

/**
 * Adds records to an archive, batch by batch; what it yields is on the disk.
 * @param paths files, or folders whose *.jsonl files are meant
 * @throws ArchiveError when the archive fails; what was yielded before is in it
 */
export async function* addFiles(
  archive: Archive,
  paths: readonly string[],
  now: () => Date = () => new Date(),
): AsyncGenerator<Added> {
  let batch: IntakeResult[] = [];
  let bytes = 0;
  for await (const result of takeInAll(await filesIn(paths))) {
    batch.push(result);
    bytes += result.ok ? result.intake.packed.length : 0;
    if (batch.length < TOGETHER && bytes < TOGETHER_BYTES) continue;
    yield* await addBatch(archive, batch, now());
    batch = [];
    bytes = 0;
  }
  yield* await addBatch(archive, batch, now());
}

async function addBatch(archive: Archive, batch: readonly IntakeResult[], now: Date): Promise<Added[]> {
  const intakes = batch.flatMap(result => (result.ok ? [result.intake] : []));
  const decisions = intakes.length === 0 ? [] : await archive.add(intakes, now);
  const byIntake = new Map(intakes.map((intake, index) => [intake, decisions[index]]));
  return batch.flatMap((result): Added[] => {
    if (!result.ok) return [{ kind: 'refused', source: result.source, sentence: result.sentence }];
    const decision = byIntake.get(result.intake);
    const { source } = result.intake;
    return decision ? [{ kind: decision.kind, source, intake: result.intake, decision }] : [];
  });
}

async function filesIn(paths: readonly string[]): Promise<string[]> {
  const files: string[] = [];
  for (const path of paths) {
    const isFolder = await stat(path).then(
      found => found.isDirectory(),
      () => false,
    );
    if (!isFolder) {
      files.push(path);
      continue;
    }
    try {
      const names = (await readdir(path)).filter(name => name.endsWith('.jsonl'));
      for (const name of names.sort()) files.push(join(path, name));
    } catch (error) {
      throw new ArchiveError(`The folder ${path} cannot be read; give another.`, error);
    }
  }
  return files;
}
