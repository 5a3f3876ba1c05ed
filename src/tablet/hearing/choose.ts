import type { LanguageCode } from '../../../prompts/types.ts';
import type { Settings } from '../settings.ts';
import { words } from '../words/index.ts';
import { type Hearing, type Listener, startEmbedded } from './start-hearing.ts';
import { startWebSpeech } from './web-speech.ts';

/** What is loaded only where it is wanted; when it cannot be, the embedded recognizer listens. */
function startVosk(context: AudioContext, listener: Listener): Hearing {
  let closed = false;
  let hearing: Hearing | undefined;
  const embedded = () => startEmbedded(context, listener);
  import('./own-model/start.ts').then(
    ({ startOwnModel }) => {
      if (!closed) hearing = startOwnModel(context, listener, embedded);
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

/** What the recognizer that comes with the page knows. */
const EMBEDDED: LanguageCode = 'en';

/** Starts whatever listens on this device by its settings; null when only touch is wanted. */
export function startHearing(
  ear: Settings['ear'],
  language: LanguageCode,
  context: AudioContext,
  listener: Listener,
): Hearing | null {
  switch (ear) {
    case 'embedded':
      if (language !== EMBEDDED) {
        listener.report(words.hearing.onlyEnglish);
        return null;
      }
      return startEmbedded(context, listener);
    case 'vosk':
      return startVosk(context, listener);
    case 'webSpeech':
      return startWebSpeech(words.locale, listener);
    case 'keys':
      return null;
  }
}
