import type { Said } from '../../machines/context.ts';
import type { StepId } from '../../prompts/types.ts';
import type { Profile } from '../profile/schema.ts';
import { assumedSaid } from './assumed.ts';

/** What is said before the first question: which engine, and what of its values is invented or only assumed. */
export function welcomeSaid(profile: Profile, step: StepId): Said[] {
  const welcome: Said = { line: 'welcome', step, values: { profile: profile.name }, priority: 'prompt' };
  const invented: Said[] = profile.invented ? [{ ...welcome, line: 'inventedProfile' }] : [];
  return [welcome, ...invented, ...assumedSaid(profile, welcome)];
}

/**
 * How long nobody was there, s, by the wall clock; unknown where that was set back meanwhile.
 * @param leftAt when the record was last written to, UTC
 */
export function awaySince(leftAt: string | undefined, now: Date): { readonly awayS?: number } {
  const awayS = (now.getTime() - Date.parse(leftAt ?? '')) / 1000;
  return awayS >= 0 ? { awayS } : {};
}
