import { z } from 'zod';
import { leastCertainty } from '../decoders/network/bounds.ts';
import { usualSilenceMs } from '../ear/patience.ts';

/**
 * The least certainty that the recognizer is shipped with. A person's own bound may ask for more; nothing may ask for
 * less, because every reply could be one that opens a gate.
 */
export const shippedCertainty = leastCertainty.reply;
/** Above this hardly anything is heard any more. */
export const highestCertainty = 0.97;

/** What one person needs otherwise than others. Every field has safe limits: a file that leaves them is refused. */
const adaptationSchema = z.strictObject({
  /** The certainty under which a reply or a number is asked for again. */
  leastCertainty: z.number().min(shippedCertainty).max(highestCertainty),
  /** Sound is made louder by this before it is listened to. */
  gainDb: z.number().min(0).max(18),
  /** Silence that ends a reply: longer for those who pause between digits. */
  trailingSilenceMs: z.number().min(usualSilenceMs).max(600),
});
export type Adaptation = z.infer<typeof adaptationSchema>;

/** As it is shipped: changes nothing. */
export const shipped: Adaptation = {
  leastCertainty: shippedCertainty,
  gainDb: 0,
  trailingSilenceMs: usualSilenceMs,
};

const tallySchema = z.strictObject({
  right: z.number().int().nonnegative(),
  unclear: z.number().int().nonnegative(),
  wrong: z.number().int().nonnegative(),
});
export type Tally = z.infer<typeof tallySchema>;

export const speakerProfileSchema = z.strictObject({
  schema: z.literal('first-fire-speaker/1'),
  name: z.string().min(1).max(80),
  measuredAt: z.iso.datetime(),
  language: z.literal('en'),
  levels: z.strictObject({
    speechDbfs: z.number(),
    noiseDbfs: z.number(),
    clipped: z.number().int().nonnegative(),
  }),
  /** On prompts that nothing was chosen on. */
  heldOut: z.strictObject({ before: tallySchema, after: tallySchema }),
  /** As shipped, where nothing made it better. */
  adaptation: adaptationSchema,
});
export type SpeakerProfile = z.infer<typeof speakerProfileSchema>;
