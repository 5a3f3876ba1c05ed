import type { english } from '../../../prompts/en/index.ts';

/** Who is at the engine. Either of the first two may stop everything at any instant. */
export const persons = ['technician', 'second', 'supervisor'] as const;
export type Person = (typeof persons)[number];

/** How something reached the session. */
export const vias = ['voice', 'keys', 'touch', 'bus', 'tool'] as const;
export type Via = (typeof vias)[number];

export const unitSystems = ['metric', 'us'] as const;

/** How a session ends. */
export const outcomes = ['signedOff', 'ended'] as const;
export type Outcome = (typeof outcomes)[number];

/** What may be read off a gauge and spoken; each has one SI unit (`quantityUnits` of the machine). */
export type Quantity = keyof typeof english.quantities;
/** What has to be true before a starter turns or fuel burns; each is opened by the steps that name it. */
export type Gate = keyof typeof english.gates;
/** Why a session was stopped. The cause decides what has to be done again. */
export type Cause = keyof typeof english.causes;

/** Causes that call for help at once, ahead of everything that is asked. */
export const emergencies = ['smokeOrFire', 'someoneHurt'] as const satisfies readonly Cause[];
export type Emergency = (typeof emergencies)[number];
