import { z } from 'zod';
import type { Gate } from '../../../machines/vocabulary.ts';
import { languageCodes } from '../../../prompts/index.ts';
import type { View } from '../../session/view.ts';
import type { Grammar } from '../../voice/ports.ts';
import { roleSchema } from './common.ts';

const number = z.number();
const text = z.string();

/** Gates are shown by their name; which ones there are is the session's business. */
const gateSchema = z.custom<Gate>(value => typeof value === 'string');

const logLineSchema = z.object({ time: text, who: text, text });

/** The one picture of the session that all faces show; see `View` for what each member means. */
export const viewSchema = z.object({
  profileName: text,
  invented: z.boolean(),
  rehearsal: z.literal(true).exactOptional(),
  switchedOff: text.exactOptional(),
  state: z.enum(['working', 'held', 'stopped', 'over']),
  drill: z.boolean().exactOptional(),
  emergencyWord: text.exactOptional(),
  key: text,
  phase: text,
  phaseNumber: number,
  phaseCount: number,
  title: text,
  prompt: text,
  remark: text.exactOptional(),
  callOuts: z.array(text).exactOptional(),
  addressed: roleSchema,
  addressedName: text,
  engine: z.enum(['off', 'cranking', 'running', 'unsure']),
  choices: z.array(text),
  controls: z.array(text),
  number: z.object({ name: text, unit: text, min: number, max: number }).nullable(),
  timer: z.object({ title: text, totalMs: number, leftMs: number, held: z.boolean() }).nullable(),
  readings: z.array(z.object({ name: text, value: text, limits: text, met: z.boolean() })),
  bus: z
    .object({
      source: text,
      state: z.enum(['notHeard', 'alive', 'silent', 'gone']),
      values: z.array(z.object({ name: text, value: text.nullable() })),
    })
    .exactOptional(),
  engineEar: z
    .object({
      speed: text.nullable(),
      trace: z.array(number.nullable()),
      microphone: text.exactOptional(),
      hunting: text.exactOptional(),
      change: text.exactOptional(),
    })
    .exactOptional(),
  gates: z.array(z.object({ gate: gateSchema, name: text, met: z.boolean() })),
  faults: z.array(text),
  openItems: z.array(text),
  hearing: z.object({
    source: text,
    levelDbfs: number.nullable(),
    clipping: z.boolean(),
    speech: z.boolean(),
    speaking: z.boolean(),
    last: z.object({ text, counted: z.boolean(), by: roleSchema }).nullable(),
  }),
  log: z.array(logLineSchema),
  problems: z.array(text),
  outcome: z.enum(['signedOff', 'ended']).nullable(),
  sights: z.array(text).exactOptional(),
  coming: z.array(z.object({ title: text, away: number })).exactOptional(),
}) satisfies z.ZodType<View>;

/** What may be said now, for a device that does the recognising. */
export const grammarSchema = z.object({
  key: text,
  language: z.enum(languageCodes).exactOptional(),
  stop: z.array(text),
  replies: z.array(z.object({ id: text, wordings: z.array(text) })),
  calls: z.array(z.object({ id: text, wordings: z.array(text) })).exactOptional(),
  agreement: text.exactOptional(),
  number: z
    .object({
      id: text,
      leads: z.array(text),
      units: z.array(text),
      writtenUnits: z.array(text).exactOptional(),
      otherUnits: z
        .array(z.object({ wordings: z.array(text), scale: number, offset: number }))
        .exactOptional(),
      wrongUnits: z.array(text).exactOptional(),
      min: number,
      max: number,
      inWords: z.object({ min: number, max: number }).exactOptional(),
      step: number,
      language: z.enum(languageCodes).exactOptional(),
      leadNeeded: z.boolean().exactOptional(),
      digitsOnly: z.boolean().exactOptional(),
    })
    .exactOptional(),
}) satisfies z.ZodType<Grammar>;
