import { z } from 'zod';
import type { ControlId } from '../../../prompts/types.ts';
import { emergencies } from '../../record/vocabulary/names.ts';
import { commandIdSchema, languageSchema, MAX_TEXT, unitsSchema } from './common.ts';
import { voiceSchema } from './ear-messages.ts';

const text = z.string().max(MAX_TEXT);
const confidence = z.number().min(0).max(1);
/** The `turn` of the state that the person saw: an answer to a question that is gone by now does not count. */
const turn = z.string().min(1).max(200);

/** What a device's own recogniser heard. Gates and read-back stay with the session on the server. */
const heardSchema = z.discriminatedUnion('kind', [
  z.strictObject({ kind: z.literal('stop'), text }),
  z.strictObject({ kind: z.literal('reply'), id: z.string().max(60), text, confidence }),
  z.strictObject({ kind: z.literal('number'), id: z.string().max(60), value: z.number(), text, confidence }),
  z.strictObject({
    kind: z.literal('unclear'),
    text,
    reason: z.enum([
      'nothingRecognized',
      'outOfGrammar',
      'lowConfidence',
      'tooLong',
      'farAway',
      'outOfRange',
    ]),
  }),
]);

export const controlIds = [
  'hold',
  'continue',
  'sayAgain',
  'goBack',
  'skip',
  'status',
  'timeLeft',
  'help',
] as const satisfies readonly ControlId[];

/** What a person wants done. */
export const deedSchema = z.discriminatedUnion('do', [
  /** Any role, in any state. From those at the engine it may say what calls for help. */
  z.strictObject({
    do: z.literal('stop'),
    via: z.enum(['touch', 'voice']).optional(),
    cause: z.enum(emergencies).optional(),
  }),
  /** Typed, or a choice touched: in the wordings that would be spoken. */
  z.strictObject({ do: z.literal('say'), turn, text: text.min(1), via: z.enum(['keys', 'touch']) }),
  /** Recognised on the device, and in whose voice, where that can be told. */
  z.strictObject({ do: z.literal('heard'), turn, heard: heardSchema, voice: voiceSchema.optional() }),
  z.strictObject({ do: z.literal('control'), turn, id: z.enum(controlIds) }),
  /** The second person's own; read back like every reply that opens a gate. */
  z.strictObject({ do: z.literal('clear'), turn }),
  /** The supervisor's; the technician decides. */
  z.strictObject({ do: z.literal('askHold') }),
  /** The technician answers it with no; a hold answers it with yes. */
  z.strictObject({ do: z.literal('declineHold') }),
  /** Another of the technician's devices leads from now on. */
  z.strictObject({ do: z.literal('takeOver') }),
  /**
   * Lets go of a device of this bay; it has to pair again. Each may do so with itself, the owner with one that has
   * left (an empty battery), the supervisor with any.
   */
  z.strictObject({ do: z.literal('forget'), device: z.string().min(1).max(60) }),
  /**
   * Makes the pairing of another device of this bay good for a working day more: never one's own, so that somebody
   * who is there vouches for it.
   */
  z.strictObject({ do: z.literal('renew'), device: z.string().min(1).max(60) }),
  /** The owner begins a session in this bay; what is left out is as the server was started. */
  z.strictObject({
    do: z.literal('begin'),
    profile: z.string().min(1).max(60).optional(),
    /** Held against the job card's own shape when it is used, so that what is wrong is said in a sentence. */
    job: z.record(z.string().max(40), z.string().max(160).optional()).optional(),
    units: unitsSchema.optional(),
    language: languageSchema.optional(),
  }),
  /**
   * The owner goes on with a session of this bay that broke off, was set aside, or was held on a tablet without the
   * laptop; nothing may go on here meanwhile.
   */
  z.strictObject({ do: z.literal('resume'), session: z.string().min(1).max(200) }),
  /**
   * The owner leaves a session as it is, for another day, where the procedure would let it be ended: everything is off,
   * and somebody has said so. The bay is free then.
   */
  z.strictObject({ do: z.literal('setAside') }),
  /** Somebody at the engine of a session that is lost says that it is off, and all is safe. */
  z.strictObject({ do: z.literal('madeSafe') }),
]);
export type Deed = z.infer<typeof deedSchema>;

export const commandSchema = z.strictObject({
  type: z.literal('command'),
  id: commandIdSchema,
  deed: deedSchema,
});
export type Command = z.infer<typeof commandSchema>;
