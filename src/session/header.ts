import { z } from 'zod';
import type { JobCard } from '../../machines/context.ts';
import { type Profile, profileSchema } from '../profile/schema.ts';
import type { JsonObject } from '../record/index.ts';
import { jobCardSchema } from './job-card.ts';
import { type UnitSystem, unitSystems } from './units.ts';

/** What the first entry of a record says: all that is needed to replay the session from its events. */
export interface SessionHeader {
  readonly profile: Profile;
  readonly job: JobCard;
  readonly language: string;
  readonly units: UnitSystem;
}

const headerSchema = z.object({
  profile: profileSchema,
  job: jobCardSchema,
  language: z.string(),
  units: z.enum(unitSystems),
});

export const headerData = ({ profile, job, language, units }: SessionHeader): JsonObject =>
  JSON.parse(JSON.stringify({ profile, job, language, units }));

/** The header of a record, or null when the record was not begun by a session of this version. */
export function readHeader(data: JsonObject): SessionHeader | null {
  const parsed = headerSchema.safeParse(data);
  return parsed.success ? parsed.data : null;
}
