import { z } from 'zod';
import type { EngineHeard } from '../../engineering/engine-sound/ear.ts';
import type { Firing } from '../../engineering/engine-sound/firing.ts';

/** As many bands as an engine is listened to in, and as many numbers as a voice's direction has. */
const BANDS = 5;
const VOICE_NUMBERS = 96;

const level = z.number().min(-200).max(20);
const seconds = z.number().min(0).max(1e7);

/** How the engine of the session fires: what its sound is searched for. */
export const firingSchema = z.object({
  cylinders: z.int().min(1).max(24),
  strokes: z.union([z.literal(2), z.literal(4)]),
  unevenDeg: z.array(z.number().min(0).max(720)).max(24).readonly().optional(),
}) satisfies z.ZodType<Firing>;

/**
 * What a device heard of the engine, in numbers and without any sound: its speed where that is sure, what happened, how it
 * hunts, and how loud each band was. About seven times a second; one may be lost.
 */
export const engineSchema = z.strictObject({
  type: z.literal('engine'),
  /** The session whose engine was listened for: what comes late is not taken for that of the next one. */
  session: z.string().min(1).max(200),
  heard: z.strictObject({
    toldS: seconds,
    atS: seconds,
    claim: z
      .strictObject({ rpm: z.number().min(0).max(10_000), confidence: z.number().min(0).max(1) })
      .nullable(),
    happened: z.enum(['cranking', 'fired', 'running', 'stalled', 'lost']).nullable(),
    hunting: z
      .strictObject({ amplitudeRpm: z.number().min(0).max(10_000), periodS: z.number().min(0).max(100) })
      .nullable(),
    levelsDb: z.array(level).length(BANDS),
  }) satisfies z.ZodType<EngineHeard>,
});

/** Whose voice something was said in: a direction, from which no sound can be made again. */
export const voiceSchema = z.array(z.number().min(-1).max(1)).length(VOICE_NUMBERS);

/** The voice that a stop was said in, behind the stop, which waits for nothing. */
export const voiceOfStopSchema = z.strictObject({ type: z.literal('voiceOfStop'), voice: voiceSchema });

/** As many digits of a voice's direction as tell anything. */
const VOICE_STEPS = 10_000;

/** A voice as it is sent. */
export const sentVoice = (voice: Float32Array): number[] =>
  Array.from(voice, each => Math.max(-1, Math.min(1, Math.round(each * VOICE_STEPS) / VOICE_STEPS)));
