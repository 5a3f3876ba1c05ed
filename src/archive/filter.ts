import type { ArchivedOutcome } from './card.ts';
import { anywhere } from './fold.ts';
import type { StoreValue } from './store.ts';

/** Which sessions are meant; all that is given has to hold. */
export interface Filter {
  /** Part of the name, whatever its case or accents; so are the next three. */
  readonly vehicle?: string;
  readonly person?: string;
  /** Of the engine or of its profile. */
  readonly engine?: string;
  /** Anywhere: names, stops, faults, skips, problems. */
  readonly text?: string;
  /** First and last day, as 2026-11-25, both included, UTC. */
  readonly from?: string;
  readonly to?: string;
  readonly outcome?: ArchivedOutcome;
  /** Only records that do not verify. */
  readonly unverified?: boolean;
}

interface Condition {
  /** Behind WHERE, for the table of what is searched, under the name k. */
  readonly sql: string;
  readonly values: readonly StoreValue[];
}

const isDay = /^\d{4}-\d{2}-\d{2}$/;

/** Whether a text is a day of the calendar, as 2026-11-25. */
export const isCalendarDay = (text: string): boolean => {
  const ms = isDay.test(text) ? Date.parse(`${text}T00:00:00.000Z`) : Number.NaN;
  return !Number.isNaN(ms) && new Date(ms).toISOString().startsWith(text);
};

/** Times have all the same form, so that they compare as texts do, in any collation. */
const dayStart = (day: string): string => `${day}T00:00:00.000Z`;
const dayEnd = (day: string): string => `${day}T23:59:59.999Z`;

export function conditionOf(filter: Filter): Condition {
  const parts: string[] = [];
  const values: StoreValue[] = [];
  const add = (sql: string, value: StoreValue | undefined) => {
    if (value === undefined) return;
    parts.push(sql);
    values.push(value);
  };
  const like = (column: string, text: string | undefined) =>
    add(`k.${column} LIKE ? ESCAPE '!'`, text === undefined ? undefined : anywhere(text));
  like('vehicle_key', filter.vehicle);
  like('people_key', filter.person);
  like('engine_key', filter.engine);
  like('text_key', filter.text);
  add('k.started >= ?', filter.from === undefined ? undefined : dayStart(filter.from));
  add('k.started <= ?', filter.to === undefined ? undefined : dayEnd(filter.to));
  add('k.outcome = ?', filter.outcome);
  add('k.state <> ?', filter.unverified ? 'sound' : undefined);
  return { sql: parts.length === 0 ? '1 = 1' : parts.join(' AND '), values };
}
