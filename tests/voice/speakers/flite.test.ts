import { writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it, onTestFinished } from 'vitest';
import { durationMs } from '../../../src/voice/audio/blocks.ts';
import { VoiceError } from '../../../src/voice/errors.ts';
import { FliteSynthesizer } from '../../../src/voice/speakers/flite.ts';
import { scratchFolder } from '../../helpers/scratch.ts';
import { sleepForever } from '../../helpers/simulated-timer.ts';
import { rms } from '../../helpers/tones.ts';

function synthesizer(options?: ConstructorParameters<typeof FliteSynthesizer>[0]): FliteSynthesizer {
  const flite = new FliteSynthesizer({ sleep: sleepForever, ...options });
  onTestFinished(() => flite.close());
  return flite;
}

describe('the embedded synthesizer', () => {
  it('speaks at 16 kHz, at full level, for as long as a person would', async () => {
    const sound = await synthesizer().synthesize('Oil pressure forty. Is that right?');
    expect(sound.sampleRateHz).toBe(16_000);
    expect(durationMs(sound)).toBeGreaterThan(1_500);
    expect(durationMs(sound)).toBeLessThan(4_000);
    expect(Math.max(...sound.samples.map(Math.abs))).toBeCloseTo(0.98, 2);
    expect(rms(sound)).toBeGreaterThan(0.05);
  });

  it('gives the same sound for the same sentence', async () => {
    const flite = synthesizer();
    expect(await flite.synthesize('Stop.')).toEqual(await flite.synthesize('Stop.'));
  });

  it('leaves the main thread free while it works', async () => {
    let turns = 0;
    let done = false;
    const sound = synthesizer()
      .synthesize('Second person: look for leaks with paper, never with a hand.')
      .finally(() => {
        done = true;
      });
    while (!done) {
      await new Promise(setImmediate);
      turns++;
    }
    await sound;
    // Held up, the loop would turn once or twice.
    expect(turns).toBeGreaterThan(20);
  });

  it('answers many sentences at once, each with its own sound', async () => {
    const flite = synthesizer();
    const [short, long] = await Promise.all([
      flite.synthesize('Go.'),
      flite.synthesize('Hold it there and wait.'),
    ]);
    expect(durationMs(long)).toBeGreaterThan(durationMs(short));
  });

  it.each([
    ['nothing', '', /empty sentence/],
    ['a text far too long', 'x'.repeat(1_001), /1001 characters is too long/],
  ])('refuses %s in one sentence and goes on working', async (_what, text, sentence) => {
    const flite = synthesizer();
    await expect(flite.synthesize(text)).rejects.toThrow(sentence);
    expect((await flite.synthesize('Go.')).samples.length).toBeGreaterThan(0);
  });

  it('says so when its module is damaged, and again the next time', async () => {
    const modulePath = join(scratchFolder(), 'flite.wasm');
    writeFileSync(modulePath, 'not a module');
    const flite = synthesizer({ modulePath });
    for (const _ of [1, 2]) {
      const failure = flite.synthesize('Go.');
      await expect(failure).rejects.toBeInstanceOf(VoiceError);
      await expect(failure).rejects.toThrow(/broke down \(.*\); read the sentence/);
    }
  });

  it('gives up a sentence that takes too long, and starts afresh with the next', async () => {
    let limit = 'short';
    const flite = synthesizer({
      sleep: (ms, signal) => (limit === 'short' ? Promise.resolve() : sleepForever(ms, signal)),
    });
    await expect(flite.synthesize('Go.')).rejects.toThrow(/took too long/);
    limit = 'long';
    expect((await flite.synthesize('Go.')).samples.length).toBeGreaterThan(0);
  });

  it('fails what it was asked when it is closed', async () => {
    const flite = synthesizer();
    const sound = flite.synthesize('Go.');
    flite.close();
    await expect(sound).rejects.toThrow(/was closed/);
  });
});
