import type { View } from '../../session/view.ts';
import { words } from '../words/index.ts';

/** What has become of the stop that was given last on this device. `unanswered`: nobody may have heard of it. */
export type StopState = 'none' | 'stopping' | 'stopped' | 'nothingRuns' | 'unanswered';

/** A stop is answered within this, or people are told what to do without. */
export const ANSWER_WITHIN_MS = 1000;

export interface StopNotice {
  /** `bad`: this device reaches nobody. */
  readonly tone: 'danger' | 'bad';
  readonly text: string;
}

/** How the engine of this session is switched off, or any vehicle, where there is none. */
export const offOf = (view: Pick<View, 'switchedOff'> | null): string => view?.switchedOff ?? words.keyOff;

/** What is shown of a stop to whoever gave it, large and above everything else; null when nothing is. */
export function stopNotice(
  state: StopState,
  view: Pick<View, 'state' | 'outcome' | 'switchedOff'> | null,
): StopNotice | null {
  switch (state) {
    case 'none':
      return null;
    case 'stopping':
      return { tone: 'danger', text: words.stopStates.stopping };
    case 'unanswered':
      return { tone: 'bad', text: words.stopStates.unanswered(offOf(view)) };
    case 'stopped':
      // Where there is a session, the band says so, and what was called out stands below it.
      return view === null ? { tone: 'danger', text: words.stopped(offOf(view)) } : null;
    case 'nothingRuns':
      return view === null || view.outcome ? { tone: 'danger', text: words.stopStates.nothingRuns } : null;
  }
}
