import { expect, it } from 'vitest';
import { hearScenes } from '../../bench/hearing/accuracy.ts';
import { idleNoise } from '../../bench/hearing/engine-noise.ts';
import { sameEar } from '../../bench/hearing/listener.ts';
import { type Saying, sceneOf } from '../../bench/hearing/scene.ts';
import type { Grammar } from '../../src/voice/ports.ts';
import { createEmbeddedRecognizer } from '../../src/voice/recognizers/embedded.ts';

const grammar: Grammar = {
  key: 'loud',
  stop: ['stop', 'emergency stop'],
  replies: [
    { id: 'coolantFull', wordings: ['coolant full'] },
    { id: 'notYet', wordings: ['not yet'] },
    { id: 'pressureGood', wordings: ['pressure good'] },
  ],
  number: { id: 'oil', leads: ['oil pressure'], units: ['p s i'], min: 0, max: 120, step: 1 },
};

const reply = (says: string, id: string): Saying => ({ grammar, says, means: { kind: 'reply', id } });

const LONG = 10 * 60_000;

it(
  'beside an idling engine at 10 dB replies, readings and stop words are heard',
  async () => {
    const sayings: readonly Saying[] = [
      reply('coolant full', 'coolantFull'),
      reply('pressure good', 'pressureGood'),
      { grammar, says: 'oil pressure forty two', means: { kind: 'number', id: 'oil', value: 42 } },
      reply('not yet', 'notYet'),
      { grammar, says: 'emergency stop', means: { kind: 'stop' } },
    ];
    const scene = sceneOf(sayings, {
      voice: 'flite-rms',
      microphone: 'good',
      noise: { kind: 'idle', loop: idleNoise(4, 1), snrDb: 10 },
    });
    const ear = await createEmbeddedRecognizer();
    const [result] = await hearScenes([scene], sameEar(ear));
    ear.close();
    // One may be asked for again; npm run hearing has the figures.
    expect(result?.taken.right).toBeGreaterThanOrEqual(4);
    expect(result?.taken.wrong).toBe(0);
  },
  LONG,
);
