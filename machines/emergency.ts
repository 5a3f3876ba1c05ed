import type { LineId, ReplyId } from '../prompts/types.ts';
import { emergencies } from '../src/record/vocabulary/names.ts';
import type { StopRecord } from './context.ts';
import type { Emergency } from './vocabulary.ts';

/** How help is called for. */
export const helpLines: Readonly<Record<Emergency, LineId>> = {
  smokeOrFire: 'fireCall',
  someoneHurt: 'surgery',
};

/** The reply that calls for each: in every state it is taken as a stop. */
export const emergencyReplies: Readonly<Record<Emergency, ReplyId>> = {
  smokeOrFire: 'causeSmokeOrFire',
  someoneHurt: 'causeSomeoneHurt',
};

/** Whether a cause calls for help. */
export const isEmergency = (cause: string | null | undefined): cause is Emergency =>
  emergencies.some(emergency => emergency === cause);

/**
 * Whether this emergency is what everything is being made safe for already, or is known besides. Once all is off, and
 * behind a false alarm or a cause that was denied, who calls it calls anew.
 */
export const isKnownEmergency = (
  cause: Emergency,
  { stop, isMadeSafe }: { readonly stop: StopRecord | null; readonly isMadeSafe: boolean },
): boolean =>
  !isMadeSafe &&
  stop !== null &&
  stop.cause !== null &&
  stop.cause !== 'falseAlarm' &&
  [stop.cause, ...stop.also].includes(cause);

/** An emergency is the cause of the stop that it is called out in; what was known before counts as well. */
export const emergencyIn = (
  { cause, also }: Pick<StopRecord, 'cause' | 'also'>,
  named: Emergency,
): Pick<StopRecord, 'cause' | 'also'> => ({
  cause: named,
  also: cause !== null && cause !== named ? [...new Set([...also, cause])] : also,
});
