import { z } from 'zod';
import type { JobCard } from '../../machines/context.ts';
import { languageCodes } from '../../prompts/index.ts';
import type { LanguageCode } from '../../prompts/types.ts';
import type { Profile } from '../profile/schema.ts';
import type { JsonObject } from '../record/index.ts';
import { inJson, openedSchema, VOCABULARY } from '../record/vocabulary/index.ts';
import type { UnitSystem } from './units.ts';

/** What the first entry of a record says: all that is needed to replay the session from its events. */
export interface SessionHeader {
  readonly profile: Profile;
  readonly job: JobCard;
  /** What the session is held in, and its report is written in. */
  readonly language: LanguageCode;
  readonly units: UnitSystem;
  /** A model stood in for the engine. */
  readonly rehearsal?: true | undefined;
}

const languageSchema = z.object({ language: z.enum(languageCodes) });

/** The language that a record says it was held in, also where the rest of its header cannot be read; else null. */
export function languageIn(data: JsonObject): LanguageCode | null {
  const parsed = languageSchema.safeParse(data);
  return parsed.success ? parsed.data.language : null;
}

export const headerData = ({ profile, job, language, units, rehearsal }: SessionHeader): JsonObject =>
  inJson<'opened'>({ profile, job, language, units, rehearsal, vocabulary: VOCABULARY });

/** The header of a record, or null when the record was not begun by a session of this version. */
export function readHeader(data: JsonObject): SessionHeader | null {
  const parsed = openedSchema.safeParse(data);
  return parsed.success ? parsed.data : null;
}
