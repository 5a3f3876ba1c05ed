import { readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { decodeWav } from '../../../src/voice/audio/wav.ts';

export const ROOM_RATE_HZ = 16_000;

/** A reply of the recorded sessions, as samples. */
export const reply = (name: string): Float32Array => {
  const file = fileURLToPath(
    new URL(`../../../audio-fixtures/sessions/replies/${name}.wav`, import.meta.url),
  );
  return decodeWav(readFileSync(file), file).samples;
};

/** What a microphone hears: a room for so long, then each reply with time for the next question behind it. */
export function recordingOf(leadS: number, replies: readonly Float32Array[], betweenS: number): Float32Array {
  let state = 1;
  const room = (seconds: number) =>
    Float32Array.from({ length: seconds * ROOM_RATE_HZ }, () => {
      state = (Math.imul(state, 1_664_525) + 1_013_904_223) >>> 0;
      return (state / 2 ** 31 - 1) / 32_768;
    });
  const parts = [room(leadS), ...replies.flatMap(samples => [samples, room(betweenS)])];
  const all = new Float32Array(parts.reduce((sum, { length }) => sum + length, 0));
  let at = 0;
  for (const part of parts) {
    all.set(part, at);
    at += part.length;
  }
  return all;
}
