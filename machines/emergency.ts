import type { LineId } from '../prompts/types.ts';
import { emergencies } from '../src/record/vocabulary/names.ts';
import type { StopRecord } from './context.ts';
import type { Cause, Emergency } from './vocabulary.ts';

/** How help is called for. */
export const helpLines: Readonly<Record<Emergency, LineId>> = {
  smokeOrFire: 'fireCall',
  someoneHurt: 'surgery',
};

/** Whether a cause calls for help. */
export const isEmergency = (cause: Cause | null): cause is Emergency =>
  emergencies.some(emergency => emergency === cause);

/** An emergency is the cause of the stop that it is called out in; what was known before counts as well. */
export const emergencyIn = (
  { cause, also }: Pick<StopRecord, 'cause' | 'also'>,
  named: Emergency,
): Pick<StopRecord, 'cause' | 'also'> => ({
  cause: named,
  also: cause !== null && cause !== named ? [...new Set([...also, cause])] : also,
});
