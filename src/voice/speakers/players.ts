import type { Pcm } from '../ports.ts';

/** How a player takes its sound: raw 16 bit samples or a WAV file on standard input, or a file by name. */
export type Feed = 'raw' | 'wav' | 'file';

/** A system program that plays sound. */
export interface Player {
  readonly program: string;
  readonly feed: Feed;
  /** @param path the WAV file, for a player that takes one. */
  args(sound: Pcm, path: string): readonly string[];
}

const pacat: Player = {
  program: 'pacat',
  feed: 'raw',
  args: ({ sampleRateHz }) => [
    '--raw',
    '--format=s16le',
    `--rate=${sampleRateHz}`,
    '--channels=1',
    '--latency-msec=50',
  ],
};
const aplay: Player = { program: 'aplay', feed: 'wav', args: () => ['-q', '-t', 'wav', '-'] };
const sox: Player = { program: 'play', feed: 'wav', args: () => ['-q', '-t', 'wav', '-'] };
const ffplay: Player = {
  program: 'ffplay',
  feed: 'wav',
  args: () => ['-hide_banner', '-loglevel', 'error', '-nodisp', '-autoexit', '-f', 'wav', '-i', 'pipe:0'],
};
const afplay: Player = { program: 'afplay', feed: 'file', args: (_sound, path) => [path] };
const powershell: Player = {
  program: 'powershell',
  feed: 'file',
  args: (_sound, path) => [
    '-NoProfile',
    '-NonInteractive',
    '-Command',
    `(New-Object System.Media.SoundPlayer '${path.replaceAll("'", "''")}').PlaySync()`,
  ],
};

/** The players worth trying on a platform, best first: those that start soonest. */
export function playersFor(platform: NodeJS.Platform): readonly Player[] {
  switch (platform) {
    case 'linux':
      return [pacat, aplay, sox, ffplay];
    case 'darwin':
      return [afplay, sox, ffplay];
    case 'win32':
      return [powershell, ffplay];
    default:
      return [];
  }
}
