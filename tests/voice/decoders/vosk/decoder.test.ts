import { describe, expect, it } from 'vitest';
import { createVoskDecoder } from '../../../../src/voice/decoders/vosk/decoder.ts';
import type { VoskAnswer, VoskWord } from '../../../../src/voice/decoders/vosk/engine.ts';
import { createEar } from '../../../../src/voice/ear/ear.ts';
import { createLoudSpeech } from '../../../../src/voice/ear/loud-speech.ts';
import { createPlainFrontEnd } from '../../../../src/voice/front-end.ts';
import type { Grammar, Heard } from '../../../../src/voice/ports.ts';

const RATE_HZ = 16_000;
const grammar = (key = 'first'): Grammar => ({
  key,
  stop: ['stop'],
  replies: [{ id: 'yes', wordings: ['correct', 'that is right'] }],
});

/** What the engine makes of an utterance: texts on the way, stretches it takes for finished, and the end. */
interface Script {
  readonly onTheWay?: readonly VoskAnswer[];
  readonly end: readonly VoskWord[];
}

const sure = (text: string, conf = 1): VoskWord[] => text.split(' ').map(word => ({ word, conf }));
const partial = (text: string): VoskAnswer => ({ kind: 'partial', text });

/** An ear whose engine answers by a script; the sound in front of it is real. */
function rig(...scripts: readonly Script[]) {
  const phrases: (readonly string[])[] = [];
  const heard: Heard[] = [];
  const waiting = [...scripts];
  let answers = [...(waiting[0]?.onTheWay ?? [])];
  let closed = 0;
  const ear = createEar({
    frontEnd: createPlainFrontEnd(),
    speech: createLoudSpeech(),
    decoder: createVoskDecoder({
      setPhrases: next => phrases.push(next),
      accept: async () => answers.shift() ?? partial(''),
      async finish() {
        const words = waiting.shift()?.end ?? [];
        answers = [...(waiting[0]?.onTheWay ?? [])];
        return { kind: 'final', words };
      },
      close: () => {
        closed += 1;
      },
    }),
  });
  ear.onHeard(each => heard.push(each));
  ear.listen(grammar());
  let state = 1;
  const sound = (seconds: number, level: number) =>
    Float32Array.from({ length: seconds * RATE_HZ }, (_, i) => {
      state = (Math.imul(state, 1_664_525) + 1_013_904_223) >>> 0;
      return (state / 2 ** 31 - 1) / 10_000 + level * Math.sin(i * 0.7) * Math.sin(i * 0.01);
    });
  const play = async (samples: Float32Array) => {
    for (let at = 0; at < samples.length; at += 320)
      await ear.hear({ samples: samples.slice(at, at + 320), sampleRateHz: RATE_HZ });
  };
  return {
    ear,
    heard,
    phrases,
    closed: () => closed,
    quiet: () => play(sound(1, 0)),
    speak: (seconds = 0.6) => play(sound(seconds, 0.3)),
    async utterance() {
      await play(sound(1, 0));
      await play(sound(0.6, 0.3));
      await play(sound(1, 0));
    },
  };
}

describe('Vosk behind the port', () => {
  it('reports a reply with the certainty of its least certain word', async () => {
    const { heard, utterance } = rig({ end: [...sure('that is'), { word: 'right', conf: 0.9 }] });
    await utterance();
    expect(heard).toEqual([{ kind: 'reply', id: 'yes', text: 'that is right', confidence: 0.9 }]);
  });

  it.each([0.79, 0, Number.NaN])('asks again when one word has the certainty %d', async conf => {
    const { heard, utterance } = rig({ end: [...sure('that is'), { word: 'right', conf }] });
    await utterance();
    expect(heard).toMatchObject([{ kind: 'unclear', reason: 'lowConfidence' }]);
  });

  it('never takes unknown words for a yes, alone or beside one', async () => {
    const { heard, utterance } = rig(
      { end: sure('[unk]') },
      { end: sure('[unk] correct') },
      { end: sure('correct [unk]') },
      { end: [] },
    );
    for (let n = 0; n < 4; n += 1) await utterance();
    expect(heard.map(({ kind }) => kind)).toEqual(['unclear', 'unclear', 'unclear', 'unclear']);
  });

  it('stops from an unfinished text, once, whatever comes of it, and among unknown words', async () => {
    const { heard, quiet, speak } = rig({
      onTheWay: [partial('[unk]'), partial('[unk] stop'), partial('correct')],
      end: sure('correct'),
    });
    await quiet();
    await speak();
    expect(heard).toMatchObject([{ kind: 'stop' }]);
    await quiet();
    expect(heard).toHaveLength(1);
  });

  it('puts together what the engine took for finished before the speaker was through', async () => {
    const { heard, utterance } = rig({
      onTheWay: [{ kind: 'final', words: sure('that is') }],
      end: sure('right'),
    });
    await utterance();
    expect(heard).toMatchObject([{ kind: 'reply', text: 'that is right' }]);
  });

  it('hears nothing but a stop of what began while the tool spoke, or before the question changed', async () => {
    const muted = rig({ end: sure('correct') }, { end: sure('stop') });
    muted.ear.onlyStop(true);
    await muted.utterance();
    await muted.utterance();
    expect(muted.heard).toMatchObject([{ kind: 'stop' }]);
    const late = rig({ end: sure('correct') }, { end: sure('correct') });
    await late.quiet();
    await late.speak();
    late.ear.listen(grammar('second'));
    await late.quiet();
    expect(late.heard).toMatchObject([{ kind: 'unclear', reason: 'outOfGrammar' }]);
    await late.utterance();
    expect(late.heard.at(-1)).toMatchObject({ kind: 'reply' });
  });

  it('tells the engine the phrases of each question once, between utterances', async () => {
    const { ear, phrases, quiet, speak } = rig({ end: [] });
    ear.listen(grammar());
    await quiet();
    await speak();
    ear.listen(grammar('second'));
    expect(phrases).toHaveLength(1);
    await quiet();
    await speak();
    expect(phrases).toHaveLength(2);
    expect(phrases[0]).toContain('[unk]');
  });

  it('reports nothing and ends the engine once it is closed', async () => {
    const { ear, heard, utterance, closed } = rig({ end: sure('correct') });
    ear.close();
    await utterance();
    await Promise.resolve();
    expect(heard).toEqual([]);
    expect(closed()).toBe(1);
  });
});
