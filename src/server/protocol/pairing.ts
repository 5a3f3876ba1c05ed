import { z } from 'zod';
import { millisecondsSchema, PROTOCOL_VERSION, refusalSchema, roleSchema } from './common.ts';

/** `POST /api/pair`, JSON: the six digits that the server's terminal shows, and a name for the device. */
export const pairRequestSchema = z.strictObject({
  v: z.literal(PROTOCOL_VERSION),
  code: z.string().regex(/^\d{6}$/, 'a pairing code is six digits'),
  device: z.string().trim().min(1).max(40),
});
export type PairRequest = z.infer<typeof pairRequestSchema>;

/** The answer: a token to keep secret and to show in `hello`, or in `Authorization: Bearer ...`. */
export const pairAnswerSchema = z.object({
  v: z.literal(PROTOCOL_VERSION),
  token: z.string(),
  role: roleSchema,
  bay: z.string(),
  /** Wall clock of the server, in milliseconds since 1970: then the token is worth nothing. */
  expiresAtMs: millisecondsSchema,
});
export type PairAnswer = z.infer<typeof pairAnswerSchema>;

/** The body of every HTTP answer that is not a success. */
export const httpErrorSchema = z.object({ error: refusalSchema });
