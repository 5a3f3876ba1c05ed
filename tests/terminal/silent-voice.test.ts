import { expect, test } from 'vitest';
import { voiceFor } from '../../src/terminal/run/warm-voice.ts';
import { readInSilence } from '../../src/voice/speakers/read-in-silence.ts';

test('where nothing is to be heard no synthesizer is started that could fail; the time of a sentence passes', async () => {
  const voice = voiceFor({ silent: true }, 'en');
  expect(voice.synthesizer).toBe(readInSilence);
  expect(voice.remark).toBeUndefined();
  const { samples, sampleRateHz } = await voice.synthesizer.synthesize('Key off.');
  expect(samples.length / sampleRateHz).toBeGreaterThan(0.3);
  expect(samples.every(sample => sample === 0)).toBe(true);
});
