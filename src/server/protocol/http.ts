import { z } from 'zod';
import { millisecondsSchema } from './common.ts';

/** Longest text by which sessions are found. */
export const MAX_FIND = 80;

/**
 * Over HTTP, each with `Authorization: Bearer <token>`:
 * - `GET  /api/sessions?find=<text>`          past and present sessions of the shop (`sessionListSchema`)
 * - `GET  /api/sessions/<id>/log?from=<seq>`  entries of the record from this one on (`logPageSchema`)
 * - `POST /api/sessions/<id>/report`          a cookie for the next line (`reportPassSchema`)
 * - `GET  /api/sessions/<id>/report`          the report, one HTML page; by header or by that cookie
 * - `POST /api/profiles`                      an engine profile for this bay, or all of a supervisor's (`profileAnswerSchema`)
 * - `GET  /api/models`                        Vosk models of the laptop (`modelListSchema`)
 * - `GET  /api/models/<name>`                 one of them, a tar.gz
 * - `POST /api/upload`                        a record finished without the server (`uploadAnswerSchema`)
 */
export const sessionRowSchema = z.object({
  /** The name of its file without its ending. */
  id: z.string(),
  startedAt: z.string().nullable(),
  vehicle: z.string().nullable(),
  engine: z.string().nullable(),
  profile: z.string().nullable(),
  /**
   * `damaged`: the record does not verify. `notConfirmed`: its events, carried out once more, do not lead to what
   * it says. `unchecked`: nobody has looked yet. None of them is ever shown as anything better.
   */
  state: z.enum(['running', 'signedOff', 'ended', 'brokenOff', 'damaged', 'notConfirmed', 'unchecked']),
  entries: z.int().nonnegative(),
  /** Sent in by a tablet that had run without the server. */
  uploaded: z.boolean(),
  /** A session of the laptop, gone on with on a tablet without it: in another way than here, and never in its place. */
  fork: z.boolean(),
});
export type SessionRow = z.infer<typeof sessionRowSchema>;
export const sessionListSchema = z.object({ sessions: z.array(sessionRowSchema) });

export const logPageSchema = z.object({
  entries: z.array(
    z.object({
      seq: z.int(),
      at: z.string(),
      monoMs: millisecondsSchema,
      kind: z.string(),
      data: z.unknown(),
      /** With those of the entries before it, the whole line can be made of it, and held against the chain. */
      hash: z.string(),
    }),
  ),
  /** Ask from here next time. */
  next: z.int().nonnegative(),
});

export type LogPage = z.infer<typeof logPageSchema>;

export const reportPassSchema = z.object({ path: z.string() });

/** The name by which a session begins with it. */
export const profileAnswerSchema = z.object({ name: z.string() });

export const uploadAnswerSchema = z.object({
  id: z.string(),
  verified: z.boolean(),
  /** Verified, and its events lead to what it says. */
  confirmed: z.boolean(),
  /** It had been sent before; nothing was written. */
  again: z.boolean(),
  sentence: z.string(),
});
export type UploadAnswer = z.infer<typeof uploadAnswerSchema>;

export const modelListSchema = z.object({
  models: z.array(
    z.object({ name: z.string(), sha256: z.string().regex(/^[0-9a-f]{64}$/), bytes: z.int().positive() }),
  ),
});
export type ModelList = z.infer<typeof modelListSchema>;
