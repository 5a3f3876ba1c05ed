import { z } from 'zod';
import { commandSchema } from './commands.ts';
import { epochSchema, millisecondsSchema, PROTOCOL_VERSION, sequenceSchema } from './common.ts';
import { engineSchema, voiceOfStopSchema } from './ear-messages.ts';

/** First on every connection: who, and what was seen last. */
export const helloSchema = z.strictObject({
  type: z.literal('hello'),
  v: z.literal(PROTOCOL_VERSION),
  token: z.string().min(1).max(200),
  /** After a break: the frames after `seq` are sent again; left out, a snapshot comes. */
  resume: z.strictObject({ epoch: epochSchema, seq: sequenceSchema }).optional(),
});

/** Asks for the time; carries what the client found out by the ping before, so that all can see it. */
const pingSchema = z.strictObject({
  type: z.literal('ping'),
  /** The client's clock at sending; comes back unchanged. */
  sentMs: millisecondsSchema,
  found: z
    .strictObject({ offsetMs: z.number().min(-1e14).max(1e14), roundTripMs: millisecondsSchema })
    .optional(),
});

/** The level of the device's microphone, for everybody's meter; a few times a second, and it may be lost. */
const levelSchema = z.strictObject({
  type: z.literal('level'),
  levelDbfs: z.number().min(-200).max(20),
  clipping: z.boolean(),
  speech: z.boolean(),
  noiseDbfs: z.number().min(-200).max(20).optional(),
  utterance: z
    .strictObject({
      nth: z.number().int().min(1),
      speechDbfs: z.number().min(-200).max(20),
      aboveNoiseDb: z.number().min(-300).max(300),
    })
    .optional(),
});

/** Whether this device hears at all: nobody is to believe that a voice reaches the session when none does. */
const earSchema = z.strictObject({ type: z.literal('ear'), listens: z.boolean() });

/** What is left in this device's battery; said where it can be known, and when it has changed by much. */
const batteryNewsSchema = z.strictObject({
  type: z.literal('battery'),
  share: z.number().min(0).max(1),
  charging: z.boolean(),
});

/** The device that speaks has said the sentence of this frame to its end, or was cut short. */
const spokenSchema = z.strictObject({ type: z.literal('spoken'), seq: sequenceSchema });

export const clientMessageSchema = z.discriminatedUnion('type', [
  helloSchema,
  commandSchema,
  pingSchema,
  levelSchema,
  earSchema,
  engineSchema,
  voiceOfStopSchema,
  batteryNewsSchema,
  spokenSchema,
]);
export type ClientMessage = z.infer<typeof clientMessageSchema>;
export type Hello = z.infer<typeof helloSchema>;
