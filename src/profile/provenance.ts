import { z } from 'zod';
import { type ValueField, valueFields } from './fields.ts';

/** Where a value may come from, the most trusted first. */
export const origins = ['plate', 'manual', 'measured', 'seen', 'computed', 'assumed'] as const;

/** Where one value of a profile comes from. */
export const originSchema = z
  .strictObject({
    from: z.enum(origins),
    /** Page of the manual, or its chapter. */
    page: z.string().trim().min(1).max(40).optional(),
    /** The rule by which it was computed, or proposed. */
    rule: z.string().trim().min(1).max(200).optional(),
    /** The supervisor who accepts, by name, that it is only assumed. */
    acceptedBy: z.string().trim().min(1).max(80).optional(),
  })
  .superRefine((origin, context) => {
    const complain = (key: 'page' | 'rule' | 'acceptedBy', message: string) =>
      context.addIssue({ code: 'custom', path: [key], message });
    if (origin.page !== undefined && origin.from !== 'manual') complain('page', 'goes only with "manual"');
    if (origin.from === 'computed' && origin.rule === undefined)
      complain('rule', 'the rule by which it was computed has to be named');
    if (origin.acceptedBy !== undefined && origin.from !== 'assumed')
      complain('acceptedBy', 'goes only with "assumed"');
  });

export type Origin = z.infer<typeof originSchema>;

/** Where each value comes from, by its path; a value that is not named comes from nobody knows where. */
export const provenanceSchema = z.partialRecord(z.enum(valueFields), originSchema);
export type Provenance = z.infer<typeof provenanceSchema>;

/** A wrong one of these kills the engine or somebody: only who read or measured it is believed, never a rule. */
export const neverAssumed = [
  'oilPressure.floor',
  'cutOff',
  'overspeedRpm',
] as const satisfies readonly ValueField[];

/** May stay assumed where the supervisor accepts it by name. */
export const acceptedByName = {
  starterLimit: ['starter.longestBurstS', 'starter.minRestS', 'starter.burstsInARow'],
  coolant: [
    'coolant.kind',
    'coolant.systemVolumeL',
    'coolant.minShare',
    'coolant.maxShare',
    'coolant.capPressureKpa',
    'thermostat.coolantMaxC',
  ],
  heater: ['heater'],
  idle: ['idle.cold', 'idle.warm'],
} as const satisfies Record<string, readonly ValueField[]>;

export type Acceptable = keyof typeof acceptedByName;
export const acceptables = Object.keys(acceptedByName).filter((key): key is Acceptable =>
  Object.hasOwn(acceptedByName, key),
);

/** Read, measured or looked at by somebody: what a rule gives is not. */
const isSeen = (origin: Origin | undefined) =>
  origin !== undefined && ['plate', 'manual', 'measured', 'seen'].includes(origin.from);

interface Profiled {
  readonly invented: boolean;
  readonly provenance: Provenance;
}

/** Whether it is said of any value where it comes from: older profiles say it of none. */
export const saysWhere = ({ provenance }: Pick<Profiled, 'provenance'>): boolean =>
  Object.keys(provenance).length > 0;

/** The values that are assumed, in the order of the catalogue. */
export const assumedFields = ({ provenance }: Pick<Profiled, 'provenance'>): ValueField[] =>
  valueFields.filter(path => provenance[path]?.from === 'assumed');

/** What keeps a profile from the first fire of a real engine. */
export type Unfit =
  | { readonly kind: 'neverAssumed'; readonly field: ValueField }
  | { readonly kind: 'notAccepted'; readonly what: Acceptable; readonly fields: readonly ValueField[] };

/**
 * What keeps a profile from the first fire of a real engine: a value of `neverAssumed` that nobody read or measured,
 * and one of `acceptedByName` that is assumed, or comes from nobody knows where, without the supervisor's name.
 * Nothing keeps an invented engine from a rehearsal.
 */
export function unfitFor({ invented, provenance }: Profiled): Unfit[] {
  if (invented) return [];
  const accepted = (path: ValueField) => {
    const origin = provenance[path];
    return (
      origin !== undefined &&
      (origin.from === 'computed' || isSeen(origin) || origin.acceptedBy !== undefined)
    );
  };
  return [
    ...neverAssumed
      .filter(path => !isSeen(provenance[path]))
      .map(path => ({ kind: 'neverAssumed', field: path }) as const),
    ...acceptables.flatMap((what): Unfit[] => {
      const open = acceptedByName[what].filter(path => !accepted(path));
      return open.length === 0 ? [] : [{ kind: 'notAccepted', what, fields: open }];
    }),
  ];
}
