import { z } from 'zod';
import { eventRow, readingRow } from './schema.ts';

type Value = string | number | boolean | undefined;

/** A spreadsheet takes a text that begins so for a formula. */
const formula = /^[=+\-@\t\r]/;

function field(value: Value): string {
  if (value === undefined) return '';
  if (typeof value !== 'string') return String(value);
  const safe = formula.test(value) ? `'${value}` : value;
  return /[",\r\n]/.test(safe) ? `"${safe.replaceAll('"', '""')}"` : safe;
}

/** Rows as RFC 4180 wants them, in UTF-8, with a last column that says whether the record can be trusted. */
function table(
  columns: readonly string[],
  rows: readonly Readonly<Record<string, Value>>[],
  verified: boolean,
): string {
  const lines = rows.map(row => [...columns.map(name => field(row[name])), String(verified)].join(','));
  return [[...columns, 'recordVerified'].join(','), ...lines, ''].join('\r\n');
}

export const readingsCsv = (rows: readonly z.infer<typeof readingRow>[], verified: boolean): string =>
  table(Object.keys(readingRow.shape), rows, verified);

export const eventsCsv = (rows: readonly z.infer<typeof eventRow>[], verified: boolean): string =>
  table(Object.keys(eventRow.shape), rows, verified);

/** What the columns of both files mean, by the names of the files. */
export function csvSchemas(): Readonly<Record<string, unknown>> {
  const verified = { recordVerified: z.boolean().describe('false: the record is not as it was written') };
  return {
    'readings.csv': z.toJSONSchema(readingRow.extend(verified)),
    'events.csv': z.toJSONSchema(eventRow.extend(verified)),
  };
}
