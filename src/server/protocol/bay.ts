import { z } from 'zod';
import { jobCardSchema } from '../../record/vocabulary/opened.ts';
import type { View } from '../../session/view.ts';
import type { Grammar } from '../../voice/ports.ts';
import { languageSchema, millisecondsSchema, roleSchema, unitsSchema } from './common.ts';
import { firingSchema } from './ear-messages.ts';
import { grammarSchema, viewSchema } from './view.ts';

/** What is left in a device's battery; a share of 0 to 1. */
export const batterySchema = z.object({ share: z.number().min(0).max(1), charging: z.boolean() });
export type Battery = z.infer<typeof batterySchema>;

/** One paired device, as all faces see it. */
export const deviceSchema = z.object({
  id: z.string(),
  role: roleSchema,
  name: z.string(),
  connected: z.boolean(),
  /**
   * Its line is open, and for some seconds nothing has come back over it, or its page has said nothing by itself: a stop given
   * on it may reach nobody.
   */
  quiet: z.boolean(),
  /** Null where the device does not tell. */
  battery: batterySchema.nullable(),
  /** Wall clock of the server when somebody last did something on it, or it came or went; null: not since the start. */
  lastWordMs: millisecondsSchema.nullable(),
  /** Leads the session: what it sends counts as the technician's. */
  owner: z.boolean(),
  /** It has a microphone that works, and hears. */
  listens: z.boolean(),
  /** How far its clock is ahead of the server's, and the round trip behind that figure; null before a ping. */
  clockOffsetMs: z.number().nullable(),
  roundTripMs: z.number().nullable(),
});
export type Device = z.infer<typeof deviceSchema>;

/** The second person's own "clear" before the starter turns. */
const clearSchema = z.object({
  /** `needed`: only the second person can go on now; `given`: clear until `untilSessionMs`, no longer. */
  state: z.enum(['notAsked', 'needed', 'given']),
  untilSessionMs: millisecondsSchema.nullable(),
  /** A second person has a device of their own: then it is the only one whose clear counts. */
  ownDeviceOnly: z.boolean(),
});

/** Everything about one bay that faces show. */
export const bayStateSchema = z.object({
  bay: z.string(),
  /** Id of the session in the shop's folder; null before one has begun. */
  session: z.string().nullable(),
  /**
   * A session ran here that cannot be gone on with, and nobody at its engine has said that it is off and safe; its id is null
   * where nobody knows it. Null where there is none.
   */
  lost: z.object({ session: z.string().nullable() }).nullable(),
  view: viewSchema.nullable(),
  /** Names of the engine profiles that a session may begin with, the usual one first, those that tablets brought last. */
  profiles: z.array(z.string()),
  /** What a session begins with where nothing else is said. */
  usual: z.object({ job: jobCardSchema, units: unitsSchema, language: languageSchema }),
  /** What the session is held in; the usual one before there is any. */
  language: languageSchema,
  /** The session may be set aside, or ended: everything is off, and somebody has said so. */
  mayBeLeft: z.boolean(),
  /** Names the question that is asked now, unlike any other of this or another session; goes back with its answer. */
  turn: z.string(),
  grammar: grammarSchema.nullable(),
  /** What devices listen for in their sound beside speech; null while there is no session. */
  firing: firingSchema.nullable(),
  devices: z.array(deviceSchema),
  clear: clearSchema,
  /** The supervisor asks for a hold; the technician decides. */
  holdAsked: z.object({ by: z.string(), atSessionMs: millisecondsSchema }).nullable(),
});
export type BayState = Readonly<Omit<z.infer<typeof bayStateSchema>, 'view' | 'grammar'>> & {
  readonly view: View | null;
  readonly grammar: Grammar | null;
};

/** The members that changed, with their new values. */
type Changes<T> = { readonly [Key in keyof T]?: T[Key] | undefined };

export interface BayPatch {
  readonly bay: Changes<Omit<BayState, 'view'>>;
  readonly view:
    | { readonly kind: 'same' | 'none' }
    | { readonly kind: 'whole'; readonly view: View }
    | {
        readonly kind: 'part';
        readonly set: Changes<Omit<View, 'log'>>;
        /** Members that are not there any more. */
        readonly gone: readonly string[];
        readonly log: { readonly keep: number; readonly append: View['log'] } | null;
      };
}

/**
 * What changed between two states: members that are new, the view's members apart. The log of the view
 * slides: `keep` lines of its end stay, `append` follow.
 */
export const bayPatchSchema: z.ZodType<BayPatch> = z.object({
  bay: bayStateSchema.partial().omit({ view: true }),
  /** `null`: there is no view any more; a whole view where there was none; else the members that changed. */
  view: z.discriminatedUnion('kind', [
    z.object({ kind: z.literal('same') }),
    z.object({ kind: z.literal('none') }),
    z.object({ kind: z.literal('whole'), view: viewSchema }),
    z.object({
      kind: z.literal('part'),
      set: viewSchema.omit({ log: true }).partial(),
      gone: z.array(z.string()),
      log: z.object({ keep: z.int().nonnegative(), append: viewSchema.shape.log }).nullable(),
    }),
  ]),
});
