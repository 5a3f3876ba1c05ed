import { z } from 'zod';
import { millisecondsSchema, roleSchema } from './common.ts';
import { viewSchema } from './view.ts';

/** How it stands in one bay, in a line: what a supervisor looks at before anything else. */
export const bayBriefSchema = z.object({
  bay: z.string(),
  session: z.string().nullable(),
  /**
   * `drill`: a stop word was tried out, and nothing is wrong. `free`: nothing runs there. `lost`: a session ran there that cannot
   * be gone on with, and nobody has said that its engine is off.
   */
  state: z.enum(['free', 'lost', 'working', 'held', 'drill', 'stopped', 'over']),
  outcome: z.enum(['signedOff', 'ended']).nullable(),
  vehicle: z.string(),
  profile: z.string(),
  phase: z.string(),
  phaseNumber: z.int().nonnegative(),
  phaseCount: z.int().nonnegative(),
  title: z.string(),
  engine: viewSchema.shape.engine,
  /** Who is waited for; null where nobody is. */
  waitsFor: z.object({ role: roleSchema, name: z.string() }).nullable(),
  timer: z.object({ title: z.string(), leftMs: millisecondsSchema, held: z.boolean() }).nullable(),
  /** Session time. */
  sessionMs: millisecondsSchema,
  /** Somebody asks for a hold, and the technician has not said yes or no. */
  holdAsked: z.boolean(),
  /** Paired devices of this bay that are not connected. */
  away: z.array(z.object({ role: roleSchema, name: z.string() })),
});
export type BayBrief = z.infer<typeof bayBriefSchema>;

/** All bays of the shop, for supervisors only; sent whole, soon after anything in it has changed. */
export const boardSchema = z.object({ type: z.literal('board'), bays: z.array(bayBriefSchema) });
export type BoardNews = z.infer<typeof boardSchema>;
