import { z } from 'zod';
import { languageCodes } from '../../../prompts/index.ts';
import { profileSchema } from '../../profile/schema.ts';
import { unitSystems } from './names.ts';

const member = z.string().trim().min(1).max(80);

/** Who works on what. */
export const jobCardSchema = z.strictObject({
  vehicle: member,
  engine: member,
  technician: member,
  second: member,
  supervisor: member,
});

/** Absent in records of the first version. */
export const vocabulary = z.int().positive().default(1);

/** What the first entry of a record says: all that is needed to replay the session from its events. */
export const openedSchema = z.object({
  profile: profileSchema,
  job: jobCardSchema,
  /** What the session is held in, and its report is written in. */
  language: z.enum(languageCodes),
  units: z.enum(unitSystems),
  vocabulary,
});
