import type { Settings } from '../settings.ts';
import { type Hearing, type Listener, startEmbedded } from './start-hearing.ts';

/** Starts whatever listens on this device by its settings; null when only touch is wanted. */
export function startHearing(
  ear: Settings['ear'],
  context: AudioContext,
  listener: Listener,
): Hearing | null {
  switch (ear) {
    case 'embedded':
    case 'vosk':
    case 'webSpeech':
      return startEmbedded(context, listener);
    case 'keys':
      return null;
  }
}
