import { expect, it } from 'vitest';
import { playersFor } from '../../../src/voice/speakers/players.ts';
import { tone } from '../../helpers/tones.ts';

const lines = (platform: NodeJS.Platform, path = '/tmp/speech.wav') =>
  playersFor(platform).map(player => [player.program, ...player.args(tone(0.1), path)].join(' '));

it('on Linux the sound server is tried first, then ALSA, then the general programs', () => {
  expect(lines('linux')).toEqual([
    'pacat --raw --format=s16le --rate=16000 --channels=1 --latency-msec=50',
    'aplay -q -t wav -',
    'play -q -t wav -',
    'ffplay -hide_banner -loglevel error -nodisp -autoexit -f wav -i pipe:0',
  ]);
});

it('macOS plays with its own player first', () => {
  expect(lines('darwin')[0]).toBe('afplay /tmp/speech.wav');
});

it('Windows plays with its own player first, also from a path with an apostrophe in it', () => {
  expect(lines('win32', "C:\\O'Neil\\speech.wav")[0]).toContain(
    "SoundPlayer 'C:\\O''Neil\\speech.wav').PlaySync()",
  );
});

it('a system that is not known has none', () => {
  expect(lines('aix')).toEqual([]);
});
