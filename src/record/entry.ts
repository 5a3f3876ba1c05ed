import { z } from 'zod';
import { isJsonObject, type JsonObject } from './json.ts';

/** Says in the first entry whose record this is. */
export const FORMAT = 'first-fire-record';

/** `prev` of the first entry, which has none before it. */
export const NO_PREVIOUS = '0'.repeat(64);

/** Longest line read. Twice the longest written, so that torn bytes still fit in base64 in an entry. */
export const MAX_LINE_BYTES = 1 << 20;
export const MAX_ENTRY_BYTES = MAX_LINE_BYTES / 2;

/** Kinds that the record writes by itself; `append` refuses them. */
export const OPENED = 'opened';
export const REOPENED = 'resumed';
export const RECOVERED = 'recovered';

export const KIND = /^[A-Za-z][A-Za-z0-9_.:-]{0,119}$/;
export const HASH = /^[0-9a-f]{64}$/;

const WALL_TIME =
  /^\d{4}-(?:0[1-9]|1[0-2])-(?:0[1-9]|[12]\d|3[01])T(?:[01]\d|2[0-3]):[0-5]\d:[0-5]\d\.\d{3}Z$/;

/** Milliseconds since 1970 of a time such as 2026-11-25T09:12:47.031Z, or NaN when it is not exactly so. */
export function wallMs(at: string): number {
  if (!WALL_TIME.test(at)) return Number.NaN;
  const ms = Date.parse(at);
  // A 30 February is carried over to March by the parser rather than refused.
  return at.slice(8, 10) > '28' && new Date(ms).toISOString() !== at ? Number.NaN : ms;
}

/** Whether an entry is a lawful first one, or a lawful later one. */
export function openingRuleHolds(entry: {
  readonly seq: number;
  readonly kind: string;
  readonly prev: string;
  readonly data: JsonObject;
}): boolean {
  if (entry.seq !== 0) return entry.kind !== OPENED;
  return entry.kind === OPENED && entry.prev === NO_PREVIOUS && entry.data.format === FORMAT;
}

/** One line of the record. */
export const entrySchema = z
  .strictObject({
    v: z.literal(1),
    /** Counts from 0 without gaps. */
    seq: z.int().nonnegative(),
    /** Wall clock, UTC. It may jump; durations are taken from `monoMs`. */
    at: z.string().refine(at => !Number.isNaN(wallMs(at)), 'must be a UTC time with milliseconds'),
    /** Steady clock, milliseconds: since the record was opened, or for some writers since it was reopened. */
    monoMs: z.number().nonnegative('must not be negative'),
    kind: z.string().regex(KIND, 'must be a letter, then up to 119 letters, digits or _ . : -'),
    data: z.custom<JsonObject>(isJsonObject, 'must be an object'),
    /** Hash of the entry before. */
    prev: z.string().regex(HASH),
    /** SHA-256 over the RFC 8785 form of the entry without this member. */
    hash: z.string().regex(HASH),
  })
  .readonly()
  .refine(openingRuleHolds, `must begin with the entry '${OPENED}', and have it only there`);

export type Entry = z.infer<typeof entrySchema>;
