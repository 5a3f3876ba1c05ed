import { SystemClock } from '../../session/clock.ts';
import { openMicrophone } from '../../voice/audio/capture-source.ts';
import { VoiceError } from '../../voice/errors.ts';
import { createEmbeddedRecognizer } from '../../voice/recognizers/embedded.ts';
import { openSpeaking } from '../run/speaking.ts';
import { warmVoice } from '../run/warm-voice.ts';
import type { TalkIo } from './io.ts';
import { voiceTalk } from './voice-talk.ts';

/**
 * An ear and a voice beside the keys, in English, as the interview is. Without a microphone the keys go on alone, and
 * that is said.
 */
export async function openVoice(
  keys: TalkIo,
  { device }: { readonly device?: string | undefined },
): Promise<TalkIo> {
  const clock = new SystemClock();
  const { speech, remarks } = await openSpeaking({ silent: false }, warmVoice('en'), clock, false);
  for (const remark of remarks) keys.print(remark);
  try {
    const source = await openMicrophone(device === undefined ? {} : { device });
    const ear = await createEmbeddedRecognizer();
    // The tool must not hear itself.
    speech.onSpeaking(sentence => ear.onlyStop(sentence !== undefined));
    const say = async (text: string) => {
      speech.clear();
      await speech.enqueue({ text, priority: 'prompt', label: 'interview' });
    };
    const io = voiceTalk({ keys, ear, say });
    void source
      .run(block => ear.hear(block))
      .then(end => {
        if (end.kind === 'lost') keys.print(`${end.reason} Answer by the keys.`);
      });
    return {
      ...io,
      close() {
        source.close();
        ear.close();
        void speech.close();
        io.close();
      },
    };
  } catch (error) {
    if (!(error instanceof VoiceError)) throw error;
    keys.print(`${error.message} Answer by the keys.`);
    void speech.close();
    return keys;
  }
}
