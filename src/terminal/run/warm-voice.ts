import type { Synthesizer } from '../../voice/ports.ts';
import { FliteSynthesizer } from '../../voice/speakers/flite.ts';

/** The embedded voice, already loading in its own thread: its first sentence would be late otherwise. */
export function warmVoice(): Synthesizer {
  const voice = new FliteSynthesizer();
  // A voice that fails says so with the first real sentence.
  voice.synthesize('ready').catch(() => {});
  return voice;
}
