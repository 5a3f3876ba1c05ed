import { z } from 'zod';
import { languageCodes } from '../../../prompts/index.ts';

/** Raised whenever a message changes its meaning; both sides refuse another one by name. */
export const PROTOCOL_VERSION = 5;

/** What a paired person may do; the role belongs to the pairing code, never to the device's wish. */
export const roles = ['technician', 'second', 'supervisor'] as const;
export const roleSchema = z.enum(roles);
export type Role = z.infer<typeof roleSchema>;

/** Longest message from a client, in bytes of UTF-8. */
export const MAX_CLIENT_MESSAGE_BYTES = 8192;
/** Longest finished record that a tablet may send, in bytes. */
export const MAX_UPLOAD_BYTES = 32 * 1024 * 1024;
/**
 * A line that breaks comes back within seconds, as a rule; after this, ms, nobody is to count on it: the bay asks for another
 * leader, and the page says that its laptop is away.
 */
export const AWAY_AFTER_MS = 10_000;
/** Most entries of a record in one answer. */
export const ENTRIES_IN_A_PAGE = 500;
/** Longest typed line or recognised sentence. */
export const MAX_TEXT = 400;

/** A command's own id, made by the client: sent again with the same id it is not done again. */
export const commandIdSchema = z.uuid();

/** Sequence numbers count up by one for each frame that a bay sends out, from 1. */
export const sequenceSchema = z.int().nonnegative();

/** Names one run of the server for one bay: sequence numbers mean nothing in another. */
export const epochSchema = z.string().min(8).max(64);

/** Of a session: what it is spoken and shown in. */
export const languageSchema = z.enum(languageCodes);
export const unitsSchema = z.enum(['metric', 'us']);

/** Longest engine profile that a tablet may bring, in bytes. */
export const MAX_PROFILE_BYTES = 64 * 1024;

/** Milliseconds of any of the clocks. */
export const millisecondsSchema = z.number().min(0).max(1e14);

const errorCodes = [
  /** Not a message of this protocol. */
  'malformed',
  'tooLong',
  'otherVersion',
  /** No token, an unknown one, or one that has expired: pair again. */
  'notPaired',
  /** The six digits are wrong, used or out of date. */
  'wrongCode',
  'tooManyTries',
  'tooFast',
  /** This role may not do that. */
  'notYourRole',
  /** Another device leads the session: take over first. */
  'notTheOwner',
  /** The answer belongs to a question that is no longer asked. */
  'tooLate',
  /** Not possible in the state that the session is in. */
  'notNow',
  'notFound',
  /** It belongs to another bay, or to the laptop itself. */
  'notYours',
  /** Too much of the same is being done already: later it may be. */
  'busy',
  /** The same pairing has said hello on another connection. */
  'replaced',
  'wrongOrigin',
  /** The server itself failed; nothing was done. */
  'failed',
] as const;
export const errorCodeSchema = z.enum(errorCodes);
export type ErrorCode = z.infer<typeof errorCodeSchema>;

/** Why something was refused: a code for the program, one sentence for the person. */
export const refusalSchema = z.object({ code: errorCodeSchema, sentence: z.string() });
export type Refusal = z.infer<typeof refusalSchema>;
