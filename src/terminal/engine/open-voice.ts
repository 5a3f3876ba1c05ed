import type { Language } from '../../../prompts/types.ts';
import { SystemClock } from '../../session/clock.ts';
import { openMicrophone } from '../../voice/audio/capture-source.ts';
import { VoiceError } from '../../voice/errors.ts';
import { isHeard } from '../../voice/languages/index.ts';
import { createEmbeddedRecognizer } from '../../voice/recognizers/embedded.ts';
import { openSpeaking } from '../run/speaking.ts';
import { warmVoice } from '../run/warm-voice.ts';
import type { TalkIo } from './io.ts';
import { voiceTalk } from './voice-talk.ts';

/**
 * An ear and a voice beside the keys, in the language of the interview. Where nobody is heard in it, or there is no
 * microphone, the keys go on alone, and that is said.
 */
export async function openVoice(
  keys: TalkIo,
  { device }: { readonly device?: string | undefined },
  language: Language,
): Promise<TalkIo> {
  const { code } = language;
  if (!isHeard(code)) {
    keys.print(`Nobody is heard in the language "${code}" yet. Answer by the keys.`);
    return keys;
  }
  const clock = new SystemClock();
  const { speech, remarks } = await openSpeaking({ silent: false }, warmVoice(code), clock, false);
  for (const remark of remarks) keys.print(remark);
  try {
    const source = await openMicrophone(device === undefined ? {} : { device });
    const ear = await createEmbeddedRecognizer({ language: code });
    // The tool must not hear itself.
    speech.onSpeaking(sentence => ear.onlyStop(sentence !== undefined));
    const say = async (text: string) => {
      speech.clear();
      await speech.enqueue({ text, priority: 'prompt', label: 'interview' });
    };
    void source
      .run(block => ear.hear(block))
      .then(end => {
        if (end.kind === 'lost') keys.print(`${end.reason} Answer by the keys.`);
      });
    return voiceTalk({
      keys,
      language,
      ear,
      say,
      close() {
        source.close();
        ear.close();
        void speech.close();
      },
    });
  } catch (error) {
    if (!(error instanceof VoiceError)) throw error;
    keys.print(`${error.message} Answer by the keys.`);
    void speech.close();
    return keys;
  }
}
