import { expect, test } from 'vitest';
import { voiceFor } from '../../src/terminal/run/warm-voice.ts';
import { ReadingPace } from '../../src/voice/speakers/reading-pace.ts';

test('where nothing is to be heard no synthesizer is started that could fail; the time of a sentence passes', async () => {
  const voice = voiceFor({ silent: true }, 'en');
  expect(voice.synthesizer).toBeInstanceOf(ReadingPace);
  expect(voice.remark).toBeUndefined();
  const { samples, sampleRateHz } = await voice.synthesizer.synthesize('Key off.');
  expect(samples.length / sampleRateHz).toBeGreaterThan(0.3);
  expect(samples.every(sample => sample === 0)).toBe(true);
});
