import { contradictionsIn } from './consistency.ts';
import { type Profile, profileShape } from './shape.ts';

export { busQuantities, type Profile, skippableSteps } from './shape.ts';
export { fastestRpm, stopsFromRpm } from './speeds.ts';

/** An engine profile: its fields, and what has to hold among them, a sentence a fault. */
export const profileSchema = profileShape.superRefine((profile, context) => {
  for (const { path, message } of contradictionsIn(profile))
    context.addIssue({ code: 'custom', path: [...path], message });
});

export type VehicleBus = NonNullable<Profile['bus']>;
export type Lamp = Profile['lamps'][number];
