import { expect, test } from 'vitest';
import { goOnWith } from '../../src/terminal/run/go-on-with.ts';
import { type RunOptions, SPEAKERS_FOLDER } from '../../src/terminal/run/options.ts';

const usual: RunOptions = {
  profile: 'demo-six',
  fast: false,
  silent: false,
  mic: true,
  language: 'en',
  speakers: SPEAKERS_FOLDER,
};

test('a session begun with a microphone and a loudspeaker goes on so, by its record alone', () => {
  expect(goOnWith('a.jsonl', usual)).toBe('a.jsonl');
});

test('one that was silent, by keys, and on the bus goes on so', () => {
  expect(goOnWith('a.jsonl', { ...usual, silent: true, mic: false, bus: 'can0' })).toBe(
    'a.jsonl --silent --no-mic --bus can0',
  );
});

test('names with spaces and quotation marks stand as a shell takes them', () => {
  expect(goOnWith('my records/a.jsonl', { ...usual, device: "Ada's microphone" })).toBe(
    `'my records/a.jsonl' --device 'Ada'\\''s microphone'`,
  );
});

test('a recording is not heard from its beginning again, nor a file of sound written over', () => {
  expect(goOnWith('a.jsonl', { ...usual, hear: 'a.wav', fast: true, keepAudio: 'b.wav' })).toBe('a.jsonl');
});
