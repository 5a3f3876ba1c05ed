import { describe, expect, test } from 'vitest';
import { SystemClock } from '../../src/session/clock.ts';
import { BayVoice } from '../../src/tablet/remote/bay-voice.ts';
import type { Speaking } from '../../src/tablet/speaking/choose.ts';
import { readInSilence } from '../../src/voice/speakers/read-in-silence.ts';
import { SilentSink } from '../../src/voice/speakers/silent-sink.ts';
import { SpeechQueue } from '../../src/voice/speech-queue.ts';

const clock = new SystemClock();

/** A voice that nobody hears and that takes no time, or one that fails at each sentence. */
function voiceThat(plays: () => Promise<void>) {
  const said: string[] = [];
  const sink = new SilentSink(async () => {});
  const speech = new SpeechQueue(
    { ...readInSilence, synthesize: text => readInSilence.synthesize(text) },
    {
      description: sink.description,
      async play(_sound, label) {
        await plays();
        said.push(label ?? '');
      },
      cut: () => sink.cut(),
      close: () => sink.close(),
    },
    () => clock.nowMs(),
  );
  const speaking: Speaking = { speech, description: 'a test', close: () => speech.close() };
  return { said, speaking };
}

function inBay(speaking: Promise<Speaking>) {
  const troubles: string[] = [];
  const speaks: boolean[] = [];
  const voice = new BayVoice(
    speaking,
    now => speaks.push(now),
    sentence => troubles.push(sentence),
  );
  return { voice, troubles, speaks };
}

const KEY_OFF = { text: 'Key off.', priority: 'prompt' } as const;

describe('The voice of a device in its bay', () => {
  test('says what it is given, also before it is there, and tells while it does', async () => {
    const { said, speaking } = voiceThat(async () => {});
    let isThere: (speaking: Speaking) => void = () => {};
    const { voice, troubles, speaks } = inBay(new Promise(resolve => (isThere = resolve)));
    const told = voice.say(KEY_OFF);
    isThere(speaking);
    await told;
    expect([said, speaks, troubles]).toEqual([['Key off.'], [true, false], []]);
    voice.hush();
    await voice.close();
  });

  test('that fails at a sentence is a trouble of the bay', async () => {
    const { speaking } = voiceThat(() => Promise.reject(new Error('No loudspeaker.')));
    const { voice, troubles } = inBay(Promise.resolve(speaking));
    await voice.say(KEY_OFF);
    expect(troubles).toEqual(['No loudspeaker.']);
    await voice.close();
  });

  test('that never comes is one, once, and everything else goes on without it', async () => {
    const { voice, troubles } = inBay(Promise.reject(new Error('no such file')));
    await voice.say(KEY_OFF);
    await voice.say({ text: 'No answer.', priority: 'hazard' });
    voice.hush();
    await voice.close();
    expect(troubles).toEqual(["The device's voice failed (no such file); read the sentence on the screen."]);
  });
});
