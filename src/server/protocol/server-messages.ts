import { z } from 'zod';
import { type BayState, bayPatchSchema, bayStateSchema } from './bay.ts';
import { boardSchema } from './board.ts';
import {
  commandIdSchema,
  epochSchema,
  errorCodeSchema,
  millisecondsSchema,
  PROTOCOL_VERSION,
  roleSchema,
  sequenceSchema,
} from './common.ts';

/** The answer to `hello`; a snapshot or the missed frames follow. */
const welcomeSchema = z.object({
  type: z.literal('welcome'),
  v: z.literal(PROTOCOL_VERSION),
  epoch: epochSchema,
  role: roleSchema,
  bay: z.string(),
  /** This device, as it is named in the list of devices. */
  device: z.string(),
  serverMs: millisecondsSchema,
  /** Of the last frame that was sent so far: those up to it that follow are sent again. */
  seq: sequenceSchema,
});

const stateSchema: z.ZodType<BayState> = bayStateSchema;

/** The whole state; frames go on from `seq`. */
const snapshotSchema = z.object({
  type: z.literal('snapshot'),
  seq: sequenceSchema,
  /** Session time at which the state was taken: a timer's `leftMs` counts from here. */
  sessionMs: millisecondsSchema,
  state: stateSchema,
});

/** What changed since the frame before. */
const patchFrameSchema = z.object({
  type: z.literal('patch'),
  seq: sequenceSchema,
  sessionMs: millisecondsSchema,
  patch: bayPatchSchema,
});

/**
 * A sentence to be spoken once; a hazard comes as two frames. The owner's device speaks all of them and
 * answers each with `spoken`; the second person's speaks hazards and what is addressed to the second person.
 * Of those that are sent again after a break it speaks what is so still: call-outs that stand, and the question of this turn.
 */
const sayFrameSchema = z.object({
  type: z.literal('say'),
  seq: sequenceSchema,
  sessionMs: millisecondsSchema,
  text: z.string(),
  priority: z.enum(['hazard', 'prompt', 'notice']),
  /** Whom the question is for; the second person's phone speaks what is addressed to the second person. */
  addressed: roleSchema,
  /** Names the question that was asked as it was said. */
  turn: z.string(),
});

/** What is being said, hazards excepted, is overtaken: silence, and drop what waits. */
const hushFrameSchema = z.object({
  type: z.literal('hush'),
  seq: sequenceSchema,
  sessionMs: millisecondsSchema,
});

export const frameSchema = z.discriminatedUnion('type', [patchFrameSchema, sayFrameSchema, hushFrameSchema]);
export type Frame = z.infer<typeof frameSchema>;

/** What came of a stop: the session is stopped, or there is none that could be. */
export const stopAnswers = ['stopped', 'nothingRuns'] as const;
export type StopAnswer = (typeof stopAnswers)[number];

/**
 * The command is done and on the record, `again` when it had been done before; or it was refused. A stop is
 * answered as soon as it counts, before the disk has it, and `again` is a stop of a device that has stopped
 * this session before and nobody has gone on since.
 */
const ackSchema = z.object({
  type: z.literal('ack'),
  id: commandIdSchema,
  again: z.boolean(),
  /** Of a stop, and only of one. */
  stop: z.enum(stopAnswers).optional(),
});

/** How it stands with this device's pairing, where there is something to say. */
export const pairingNewsSchema = z.object({
  type: z.literal('pairing'),
  /** `stopOnly`: it has run out; while the session goes on it may still stop, and nothing else. */
  state: z.enum(['good', 'endsSoon', 'stopOnly']),
  expiresAtMs: millisecondsSchema,
  sentence: z.string(),
});
export type PairingNews = z.infer<typeof pairingNewsSchema>;

const errorSchema = z.object({
  type: z.literal('error'),
  /** The command that was refused, where it was one. */
  id: commandIdSchema.nullable(),
  code: errorCodeSchema,
  sentence: z.string(),
  /** The connection is closed after it. */
  final: z.boolean(),
});

const pongSchema = z.object({
  type: z.literal('pong'),
  sentMs: millisecondsSchema,
  /** Wall clock of the server, milliseconds since 1970. */
  serverMs: millisecondsSchema,
  /** Session time; null before a session has begun. */
  sessionMs: millisecondsSchema.nullable(),
});

/** The level of the owner's microphone; never repeated. */
const levelNewsSchema = z.object({
  type: z.literal('levelNews'),
  levelDbfs: z.number(),
  clipping: z.boolean(),
  speech: z.boolean(),
});

export const serverMessageSchema = z.discriminatedUnion('type', [
  welcomeSchema,
  snapshotSchema,
  patchFrameSchema,
  sayFrameSchema,
  hushFrameSchema,
  ackSchema,
  pairingNewsSchema,
  errorSchema,
  pongSchema,
  levelNewsSchema,
  boardSchema,
]);
export type ServerMessage = z.infer<typeof serverMessageSchema>;
