import type { Recorded } from '../../record/vocabulary/index.ts';
import type { SigningStory } from '../model.ts';
import { deviceBefore } from './devices.ts';

const SIGN = 'signOff.sign.';

/**
 * How the supervisor signed: with every answer to the last question from their own paired device, or not proved to be
 * theirs. A record that was taken back from its signature is not signed.
 */
export function signingOf(entries: readonly Recorded[]): SigningStory | null {
  const last = entries.findLastIndex(entry => entry.kind === 'passed' && entry.data.step === 'signOff.sign');
  const passed = entries[last];
  if (passed === undefined) return null;
  const answers: number[] = [];
  for (let at = last - 1; at >= 0; at -= 1) {
    const entry = entries[at];
    if (entry?.kind !== 'event') continue;
    // The event that led to the question was not yet an answer to it.
    if (answers.length > 0 && !entry.data.state.startsWith(SIGN)) break;
    if (entry.data.type === 'reply') answers.push(at);
    else if (entry.data.type !== 'clock') break;
    if (entry.data.type === 'reply' && entry.data.id === 'iSign') break;
  }
  const devices = answers.map(index => deviceBefore(entries, index));
  const own = devices.length > 0 && devices.every(device => device?.role === 'supervisor');
  const name = devices[0]?.name;
  return { timeMs: passed.timeMs, ...(own && name !== undefined ? { device: name } : {}) };
}
