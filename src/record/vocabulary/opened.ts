import { z } from 'zod';
import { languageCodes } from '../../../prompts/index.ts';
import { profileSchema } from '../../profile/schema.ts';
import { unitSystems } from './names.ts';

const member = z.string().trim().min(1).max(80);

const freeText = z.string().trim().max(160).optional();

/** What may stand on a job card besides who works on what, as free text. */
export const jobDetailShape = {
  /** Serial number of the engine, or VIN. */
  serial: freeText,
  hours: freeText,
  oilUsed: freeText,
  coolantUsed: freeText,
  filterParts: freeText,
};

type JobDetail = keyof typeof jobDetailShape;

export const jobDetails = [
  'serial',
  'hours',
  'oilUsed',
  'coolantUsed',
  'filterParts',
] as const satisfies readonly JobDetail[];

/** Who works on what, and on request what was built in and filled in. */
export const jobCardSchema = z.strictObject({
  vehicle: member,
  engine: member,
  technician: member,
  second: member,
  supervisor: member,
  ...jobDetailShape,
});

/**
 * What profiles were not asked for before the third vocabulary, by which nothing is carried out any more; and before the
 * ninth, in which nothing was given back at the end, and no mode switch asked for.
 */
const notYetAsked = {
  handsBack: false,
  fuelling: { disabledBy: 'electric', at: 'injector harness plug' },
  prelube: null,
  turbo: false,
  firstRun: null,
};

const older = z.looseObject({
  starter: z.looseObject({}),
  use: z.looseObject({ kind: z.string() }).optional(),
});

/** The profile of a record, also of an older one. */
const recordedProfile = z.preprocess(profile => {
  const { success, data } = older.safeParse(profile);
  if (!success) return profile;
  const { starter, use } = data;
  return {
    ...notYetAsked,
    ...data,
    starter: { burstsInARow: 1, ...starter },
    ...(use?.kind === 'generator' ? { use: { modeSwitch: null, ...use } } : {}),
  };
}, profileSchema);

/** Absent in records of the first version. */
export const vocabulary = z.int().positive().default(1);

/** What the first entry of a record says: all that is needed to replay the session from its events. */
export const openedSchema = z.object({
  profile: recordedProfile,
  job: jobCardSchema,
  /** What the session is held in, and its report is written in. */
  language: z.enum(languageCodes),
  units: z.enum(unitSystems),
  /** There only where the engine was one to practise on, that a model stood in for. */
  rehearsal: z.literal(true).optional(),
  vocabulary,
});
