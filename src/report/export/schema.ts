import { z } from 'zod';
import { isRestart, kinds } from '../../record/vocabulary/index.ts';

/** The name of a kind in the export: both ways to go on with a record are a restart of the program. */
export const rowKind = (kind: string): string => (isRestart(kind) ? 'restarted' : kind);

/** What stands among the events: the header is told apart, and gauge values of the bus are among the readings. */
export const isEventRow = (kind: string): boolean => kind !== 'opened' && kind !== 'reading';

const rowKinds = [...new Set(Object.keys(kinds).filter(isEventRow).map(rowKind))];

const seconds = z
  .number()
  .nonnegative()
  .describe('session time in seconds; a restart of the program does not count');
const sequence = z.int().nonnegative().describe('number of the entry in the record, from 0');
const wall = z.string().describe('wall clock, UTC, ISO 8601');
const optional = <T extends z.ZodType>(schema: T) => schema.optional();

/** One gauge value. */
export const readingRow = z
  .object({
    seq: sequence,
    at: wall,
    timeS: seconds,
    phase: z.string().describe('phase of the procedure'),
    step: z.string().describe('step that asked for it; empty for values of the vehicle bus'),
    quantity: z.string(),
    value: z.number().describe('in the SI unit that `unit` names'),
    unit: z.string().describe('degC, m, litre, %, count, V, rpm, kPa or s'),
    source: z
      .enum(['confirmed', 'bus', 'ear'])
      .describe(
        'spoken or typed and read back; from the vehicle bus; or heard of the engine by the microphone',
      ),
    met: optional(z.boolean()).describe('whether the limits were met; absent where nobody judged'),
    min: optional(z.number()),
    max: optional(z.number()),
    margin: optional(z.number()).describe('distance to the nearest limit, negative outside'),
    rule: optional(z.string()).describe('id of the rule behind the limits'),
    ruleSource: optional(z.string()),
    why: optional(z.string()).describe('why it was not accepted, where no limit says so'),
  })
  .describe('One gauge value');

/** One thing that happened. */
export const eventRow = z
  .object({
    seq: sequence,
    at: wall,
    timeS: seconds,
    kind: z.string().describe(rowKinds.join(', ')),
    step: z.string().describe('step it belongs to; empty where it belongs to none'),
    by: z.string().describe('technician, second or supervisor; empty where nobody did it'),
    text: z.string().describe('what was said, heard or concluded'),
  })
  .describe('One thing that happened');

/** The whole JSON export. */
export const exportSchema = z
  .object({
    format: z.literal('first-fire-report/1'),
    verified: z.boolean().describe('false: the record is not as it was written; trust nothing below'),
    fault: optional(z.string()).describe('what is wrong with the record, in one sentence'),
    lastHash: optional(z.string()).describe('SHA-256 of the last entry, 64 hex digits'),
    outcome: z.string().describe('one line'),
    startedAt: z.string().nullable(),
    durationS: z.number().nonnegative(),
    job: z
      .object({
        vehicle: z.string(),
        engine: z.string(),
        technician: z.string(),
        second: z.string(),
        supervisor: z.string(),
        serial: optional(z.string()).describe(
          'of the engine, or VIN; as it was written down, like what follows',
        ),
        hours: optional(z.string()),
        oilUsed: optional(z.string()),
        coolantUsed: optional(z.string()),
        filterParts: optional(z.string()),
      })
      .nullable(),
    gates: z.array(z.object({ gate: z.string(), met: z.boolean(), metAtS: optional(seconds) })),
    stops: z.array(
      z.object({ timeS: seconds, step: z.string(), drill: z.boolean(), cause: z.string().nullable() }),
    ),
    skips: z.array(z.object({ timeS: seconds, step: z.string(), reason: z.string(), by: z.string() })),
    faults: z.array(
      z.object({ spn: z.number(), fmi: z.number(), meaning: z.string(), decisions: z.array(z.string()) }),
    ),
    openItems: z.array(z.string()),
    readings: z.array(readingRow),
    events: z.array(eventRow),
  })
  .describe('A start-up session, as the report tells it');

export type ReadingRow = z.infer<typeof readingRow>;
export type EventRow = z.infer<typeof eventRow>;
export type Export = z.infer<typeof exportSchema>;

/** What the JSON export is made of: JSON Schema, draft 2020-12. */
export const reportJsonSchema = () => z.toJSONSchema(exportSchema);
