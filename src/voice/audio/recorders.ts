/** All recorders are asked for this: 16 bit little-endian mono at the rate the recognizer wants. */
export const CAPTURE_RATE_HZ = 16_000;

/** A system program that writes what the microphone hears to its standard output. */
export interface Recorder {
  readonly program: string;
  readonly args: readonly string[];
}

const RATE = `${CAPTURE_RATE_HZ}`;
const FFMPEG_QUIET = ['-hide_banner', '-loglevel', 'error', '-nostdin'];
const FFMPEG_RAW = ['-ac', '1', '-ar', RATE, '-f', 's16le', '-flush_packets', '1', '-'];
const SOX_RAW = ['-t', 'raw', '-r', RATE, '-e', 'signed-integer', '-b', '16', '-c', '1', '-L', '-'];
const ALSA_RAW = ['-t', 'raw', '-f', 'S16_LE', '-r', RATE, '-c', '1'];
const PULSE_RAW = ['--raw', '--format=s16le', `--rate=${RATE}`, '--channels=1', '--latency-msec=20'];

const ffmpeg = (system: string, device: string): Recorder => ({
  program: 'ffmpeg',
  args: [...FFMPEG_QUIET, '-f', system, '-i', device, ...FFMPEG_RAW],
});

/** SoX only knows the system's default, whatever `AUDIODEV` says it is. */
const sox = (device?: string): readonly Recorder[] =>
  device === undefined ? [{ program: 'rec', args: ['-q', '--buffer', '1024', ...SOX_RAW] }] : [];

/**
 * The recorders worth trying on a platform, best first.
 * @param device the system's own name of a microphone; without it the system's default. Windows has no
 *   default that ffmpeg could ask for: there is nothing to try until a name is known (`windowsMicrophone`).
 */
export function recordersFor(platform: NodeJS.Platform, device?: string): readonly Recorder[] {
  switch (platform) {
    case 'linux':
      return [
        { program: 'parec', args: [...PULSE_RAW, ...(device === undefined ? [] : [`--device=${device}`])] },
        {
          program: 'arecord',
          args: ['-q', '-D', device ?? 'default', ...ALSA_RAW, '--buffer-time=100000', '--period-time=20000'],
        },
        ...sox(device),
        ffmpeg('pulse', device ?? 'default'),
        ffmpeg('alsa', device ?? 'default'),
      ];
    case 'darwin':
      return [...sox(device), ffmpeg('avfoundation', `:${device ?? 'default'}`)];
    case 'win32':
      return device === undefined ? [] : [ffmpeg('dshow', `audio=${device}`)];
    default:
      return [];
  }
}

/** How to have ffmpeg list Windows' devices; the list comes on standard error. */
export const WINDOWS_LISTING: Recorder = {
  program: 'ffmpeg',
  args: ['-hide_banner', '-nostdin', '-list_devices', 'true', '-f', 'dshow', '-i', 'dummy'],
};

/** The first microphone in ffmpeg's list of Windows' devices, in the old layout of the list or the new. */
export function windowsMicrophone(listing: string): string | undefined {
  let amongAudio = false;
  for (const line of listing.split(/\r?\n/)) {
    if (line.includes('DirectShow audio devices')) amongAudio = true;
    if (line.includes('DirectShow video devices')) amongAudio = false;
    const [, name, kind] = /"([^"]+)"(?:\s+\((audio|video)[^)]*\))?\s*$/.exec(line) ?? [];
    if (name === undefined || line.includes('Alternative name')) continue;
    if (kind === 'audio' || (kind === undefined && amongAudio)) return name;
  }
  return undefined;
}
