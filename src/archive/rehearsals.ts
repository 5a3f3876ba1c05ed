import { entrySchema } from '../record/index.ts';
import { readHeader, type SessionHeader } from '../session/header.ts';
import type { Archive, MeasuredStart } from './archive.ts';
import type { Filter } from './filter.ts';
import type { MeasureName } from './measures.ts';

const NEWLINE = 0x0a;

/** The header of an archived record; null where its first line is none. */
export function headerIn(log: Buffer): SessionHeader | null {
  const end = log.indexOf(NEWLINE);
  const first = log.subarray(0, end < 0 ? log.length : end).toString('utf8');
  try {
    const entry = entrySchema.safeParse(JSON.parse(first));
    return entry.success ? readHeader(entry.data.data) : null;
  } catch {
    return null;
  }
}

/** Looks into the beginning of archived records, once into each, whether it was a rehearsal: a model, no engine. */
export function rehearsalsOf(archive: Archive): (id: string) => Promise<boolean> {
  const known = new Map<string, boolean>();
  return async id => {
    const rehearsal = known.get(id) ?? headerIn(await archive.log(id))?.rehearsal === true;
    known.set(id, rehearsal);
    return rehearsal;
  };
}

/** What real starts measured, the last so many, and whether rehearsals were left out among them. */
export async function measuredOnEngines(
  archive: Archive,
  measure: MeasureName,
  filter: Filter,
  last: number,
): Promise<{ readonly starts: readonly MeasuredStart[]; readonly rehearsals: number }> {
  const isRehearsal = rehearsalsOf(archive);
  for (let rows = last; ; rows *= 2) {
    const all = await archive.measured(measure, filter, rows);
    const starts: MeasuredStart[] = [];
    for (const start of all) if (!(await isRehearsal(start.session.id))) starts.push(start);
    if (starts.length >= last || all.length < rows)
      return { starts: starts.slice(-last), rehearsals: all.length - starts.length };
  }
}
