import type { LanguageCode } from '../../../prompts/types.ts';
import type { SpeakerProfile } from '../../voice/speaker-profile/profile.ts';
import { openWavFolder } from '../../voice/speakers/wav-folder-sink.ts';
import { speakerOf } from '../voice-setup/profile-file.ts';
import { type ReadySound, readySound } from './hearing.ts';
import type { RunOptions } from './options.ts';

interface LookedAt {
  readonly speaker: SpeakerProfile | null;
  readonly sound: ReadySound;
}

/**
 * Looks at everything that the options name for ear and voice, before a record is begun: what cannot be used leaves none.
 * @throws OptionError or VoiceError, each one sentence
 */
export async function lookAtNamed(options: RunOptions, language: LanguageCode): Promise<LookedAt> {
  const speaker = await speakerOf(options, language);
  const sound = await readySound(options, language);
  if (options.speakTo !== undefined) await openWavFolder(options.speakTo, async () => {});
  return { speaker, sound };
}
