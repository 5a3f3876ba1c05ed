import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { concatenate } from '../../../src/voice/concatenate.ts';
import { createLoudSpeech } from '../../../src/voice/ear/loud-speech.ts';
import { stepLength, stepMs } from '../../../src/voice/ear/sound.ts';
import { FrameBuffer } from '../../../src/voice/frame-buffer.ts';
import { noise } from '../../helpers/noise.ts';

const samplesOf = (ms: number) => ms * 16;

/** Noise of one level, or of one that changes evenly from the first to the second. */
function hiss(ms: number, fromDbfs: number, toDbfs = fromDbfs): Float32Array {
  const next = noise(ms);
  const length = samplesOf(ms);
  return Float32Array.from({ length }, (_, i) => {
    const levelDbfs = fromDbfs + ((toDbfs - fromDbfs) * i) / length;
    return next() * 10 ** (levelDbfs / 20);
  });
}

const quiet = (ms: number) => hiss(ms, -60);
/** As loud as talk, and back at nothing with its last sample: a step down would be a click of its own. */
const voice = (ms: number) => hiss(ms, -20).fill(0, -1);

/** When an utterance would begin, and for how long there is speech after it. */
function heardIn(...pieces: readonly Float32Array[]) {
  const speech = createLoudSpeech();
  let beginsAtMs: number | undefined;
  let lastSpeechMs = 0;
  let atMs = 0;
  for (const step of new FrameBuffer(stepLength).next(concatenate(pieces))) {
    atMs += stepMs;
    const now = speech.next({ raw: step, heard: step, moments: [] });
    if (now.begins) beginsAtMs ??= atMs;
    if (now.speech) lastSpeechMs = atMs;
  }
  return { beginsAtMs, lastSpeechMs };
}

describe('loud speech', () => {
  it('begins an utterance once it has lasted three steps, and ceases with the last of them', () => {
    expect(heardIn(quiet(1000), voice(500), quiet(1000))).toEqual({ beginsAtMs: 1060, lastSpeechMs: 1500 });
  });

  it('does not begin one at a click or a dropped spanner of two steps', () => {
    expect(heardIn(quiet(1000), voice(40), quiet(1000)).beginsAtMs).toBeUndefined();
  });

  it('is told from a noise that it is 12 dB above, and not from one that it is 9 dB above', () => {
    expect(heardIn(hiss(1000, -40), hiss(500, -26)).beginsAtMs).toBe(1060);
    expect(heardIn(hiss(1000, -40), hiss(500, -31)).beginsAtMs).toBeUndefined();
  });

  it('never begins on a line so quiet that nothing on it can be a voice', () => {
    expect(heardIn(hiss(1000, -95), hiss(500, -70)).beginsAtMs).toBeUndefined();
    expect(heardIn(new Float32Array(16_000), hiss(500, -70)).beginsAtMs).toBeUndefined();
  });

  it('never begins in steady noise, however loud', () => {
    fc.assert(
      fc.property(fc.integer({ min: -95, max: -6 }), levelDbfs => {
        expect(heardIn(hiss(5000, levelDbfs)).beginsAtMs).toBeUndefined();
      }),
      { numRuns: 20 },
    );
  });

  it('never begins while noise swells slowly, as a warming fan does', () => {
    expect(heardIn(hiss(15_000, -60, -30)).beginsAtMs).toBeUndefined();
  });

  it('seems to begin when an engine starts, but ceases by itself', () => {
    const { beginsAtMs, lastSpeechMs } = heardIn(quiet(1000), hiss(6000, -35));
    expect(beginsAtMs).toBe(1060);
    expect(lastSpeechMs).toBeLessThan(1000 + 3000 + 500);
  });
});
