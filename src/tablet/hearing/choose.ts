import type { Settings } from '../settings.ts';
import { type Hearing, type Listener, startEmbedded } from './start-hearing.ts';
import { startWebSpeech } from './web-speech.ts';

/** Starts whatever listens on this device by its settings; null when only touch is wanted. */
export function startHearing(
  ear: Settings['ear'],
  context: AudioContext,
  listener: Listener,
): Hearing | null {
  switch (ear) {
    case 'embedded':
      return startEmbedded(context, listener);
    case 'webSpeech':
      return startWebSpeech('en-US', listener);
    case 'keys':
      return null;
  }
}
