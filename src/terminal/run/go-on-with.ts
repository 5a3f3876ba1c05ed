import { type RunOptions, SPEAKERS_FOLDER } from './options.ts';

/** A word as a shell takes it for one. */
const quoted = (word: string) =>
  /^[\w./:@%+=,-]+$/.test(word) ? word : `'${word.replaceAll("'", "'\\''")}'`;

/**
 * What stands behind `resume` to go on with a session in the manner in which it was begun: its record, who hears and
 * speaks, and the bus. A recording that was listened to is not begun anew, nor is a file of sound that was kept.
 */
export function goOnWith(path: string, options: RunOptions): string {
  const { silent, mic, device, bus, speakTo, speaker, speakers } = options;
  const named = { device, bus, 'speak-to': speakTo, speaker };
  return [
    path,
    ...(silent ? ['--silent'] : []),
    ...(mic ? [] : ['--no-mic']),
    ...Object.entries(named).flatMap(([name, value]) => (value === undefined ? [] : [`--${name}`, value])),
    ...(speakers === SPEAKERS_FOLDER ? [] : ['--speakers', speakers]),
  ]
    .map(quoted)
    .join(' ');
}
