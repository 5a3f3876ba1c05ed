import { z } from 'zod';
import { outcomes } from './card.ts';
import { recordStates } from './intake.ts';

export const SCHEMA_VERSION = 1;

/** The same for SQLite and PostgreSQL, to the letter. Times are UTC with milliseconds, hence sort as text. */
export const definitions = [
  `CREATE TABLE IF NOT EXISTS first_fire_archive (version INTEGER NOT NULL)`,
  `CREATE TABLE IF NOT EXISTS first_fire_sessions (
    id TEXT PRIMARY KEY, chain TEXT NOT NULL, head TEXT NOT NULL, entries INTEGER NOT NULL,
    state TEXT NOT NULL, fault TEXT NOT NULL, remark TEXT NOT NULL,
    vehicle TEXT NOT NULL, engine TEXT NOT NULL, profile TEXT NOT NULL,
    technician TEXT NOT NULL, second TEXT NOT NULL, supervisor TEXT NOT NULL,
    started TEXT NOT NULL, ended TEXT NOT NULL, seconds DOUBLE PRECISION,
    outcome TEXT NOT NULL, step TEXT NOT NULL, source TEXT NOT NULL, added TEXT NOT NULL)`,
  `CREATE INDEX IF NOT EXISTS first_fire_sessions_chain ON first_fire_sessions (chain)`,
  // Folded texts, only ever searched, apart from the rest: a search reads all of them, and a fifth of the bytes.
  `CREATE TABLE IF NOT EXISTS first_fire_search (
    id TEXT NOT NULL REFERENCES first_fire_sessions (id) ON DELETE CASCADE,
    started TEXT NOT NULL, outcome TEXT NOT NULL, state TEXT NOT NULL,
    vehicle_key TEXT NOT NULL, people_key TEXT NOT NULL, engine_key TEXT NOT NULL, text_key TEXT NOT NULL)`,
  `CREATE INDEX IF NOT EXISTS first_fire_search_id ON first_fire_search (id)`,
  // Apart from the sessions, so that searching these need not turn over the records' pages.
  `CREATE TABLE IF NOT EXISTS first_fire_logs (
    id TEXT PRIMARY KEY REFERENCES first_fire_sessions (id) ON DELETE CASCADE, packed BYTEA NOT NULL)`,
  `CREATE TABLE IF NOT EXISTS first_fire_measures (
    id TEXT NOT NULL REFERENCES first_fire_sessions (id) ON DELETE CASCADE,
    measure TEXT NOT NULL, nth INTEGER NOT NULL, at TEXT NOT NULL, value DOUBLE PRECISION NOT NULL,
    PRIMARY KEY (id, measure, nth))`,
  `CREATE INDEX IF NOT EXISTS first_fire_measures_at ON first_fire_measures (measure, at)`,
] as const;

/** One archived session, as it is shown and given to other programs. */
export const sessionSchema = z.object({
  id: z.string(),
  chain: z.string(),
  head: z.string(),
  entries: z.int(),
  state: z.enum(recordStates),
  fault: z.string(),
  remark: z.string(),
  vehicle: z.string(),
  engine: z.string(),
  profile: z.string(),
  technician: z.string(),
  second: z.string(),
  supervisor: z.string(),
  started: z.string(),
  ended: z.string(),
  seconds: z.number().nullable(),
  outcome: z.enum(outcomes),
  step: z.string(),
  source: z.string(),
  added: z.string(),
});

export type ArchivedSession = z.infer<typeof sessionSchema>;

export const sessionColumns = sessionSchema.keyof().options;

export const searchColumns = [
  'id',
  'started',
  'outcome',
  'state',
  'vehicle_key',
  'people_key',
  'engine_key',
  'text_key',
] as const;
