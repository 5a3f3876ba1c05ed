import { isHeard, voiceLanguage } from '../../voice/languages/index.ts';
import type { HeardLanguage, SpokenLanguage } from '../../voice/ports.ts';
import type { Settings } from '../settings.ts';
import { type Hearing, type Listener, startEmbedded } from './start-hearing.ts';
import { startWebSpeech } from './web-speech.ts';

/** What is loaded only where it is wanted; when it cannot be, the embedded recognizer listens. */
function startVosk(context: AudioContext, language: HeardLanguage, listener: Listener): Hearing {
  let closed = false;
  let hearing: Hearing | undefined;
  const embedded = () => startEmbedded(context, language, listener);
  import('./own-model/start.ts').then(
    ({ startOwnModel }) => {
      if (!closed) hearing = startOwnModel(context, language, listener, embedded);
    },
    () => {
      if (closed) return;
      listener.report('Vosk cannot be loaded without a network. The embedded recognizer listens instead.');
      hearing = embedded();
    },
  );
  return {
    close() {
      closed = true;
      hearing?.close();
    },
  };
}

/**
 * Starts whatever listens on this device by its settings; null when only touch is wanted, or when no ear was taught the
 * language, which is said.
 */
export function startHearing(
  ear: Settings['ear'],
  context: AudioContext,
  language: SpokenLanguage,
  listener: Listener,
): Hearing | null {
  const { caution, tag } = voiceLanguage(language);
  if (ear !== 'keys' && caution !== undefined) listener.report(caution);
  if (!isHeard(language)) return null;
  switch (ear) {
    case 'embedded':
      return startEmbedded(context, language, listener);
    case 'vosk':
      return startVosk(context, language, listener);
    case 'webSpeech':
      return startWebSpeech(tag, listener);
    case 'keys':
      return null;
  }
}
