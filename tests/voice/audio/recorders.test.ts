import { describe, expect, it } from 'vitest';
import { recordersFor, windowsMicrophone } from '../../../src/voice/audio/recorders.ts';

const lines = (platform: NodeJS.Platform, device?: string) =>
  recordersFor(platform, device).map(({ program, args }) => [program, ...args].join(' '));

describe('the recorders tried on a platform', () => {
  it('are, on Linux, the sound server, then ALSA, then the general programs', () => {
    expect(lines('linux')).toEqual([
      'parec --raw --format=s16le --rate=16000 --channels=1 --latency-msec=20',
      'arecord -q -D default -t raw -f S16_LE -r 16000 -c 1 --buffer-time=100000 --period-time=20000',
      'rec -q --buffer 1024 -t raw -r 16000 -e signed-integer -b 16 -c 1 -L -',
      'ffmpeg -hide_banner -loglevel error -nostdin -f pulse -i default -ac 1 -ar 16000 -f s16le -flush_packets 1 -',
      'ffmpeg -hide_banner -loglevel error -nostdin -f alsa -i default -ac 1 -ar 16000 -f s16le -flush_packets 1 -',
    ]);
  });

  it('are, on macOS, SoX and ffmpeg', () => {
    expect(lines('darwin')).toEqual([
      'rec -q --buffer 1024 -t raw -r 16000 -e signed-integer -b 16 -c 1 -L -',
      'ffmpeg -hide_banner -loglevel error -nostdin -f avfoundation -i :default -ac 1 -ar 16000 -f s16le -flush_packets 1 -',
    ]);
  });

  it('take a named microphone, and leave out those that cannot', () => {
    expect(lines('linux', 'headset').map(line => line.split(' ')[0])).toEqual([
      'parec',
      'arecord',
      'ffmpeg',
      'ffmpeg',
    ]);
    for (const line of lines('linux', 'headset')) expect(line).toContain('headset');
    expect(lines('darwin', '1')).toEqual([expect.stringContaining('-f avfoundation -i :1 ')]);
    expect(lines('win32', 'Headset (USB)')).toEqual([
      expect.stringContaining('-f dshow -i audio=Headset (USB) '),
    ]);
  });

  it('are none on Windows without a name, and none on a system not known', () => {
    expect(lines('win32')).toEqual([]);
    expect(lines('aix')).toEqual([]);
  });
});

describe("the first microphone in ffmpeg's list of Windows' devices", () => {
  // Both layouts from memory of ffmpeg 4 and ffmpeg 5; not run on Windows.
  it.each([
    [
      'old layout',
      '[dshow @ 01] DirectShow video devices (some may be both video and audio devices)\n' +
        '[dshow @ 01]  "Camera"\n[dshow @ 01]     Alternative name "@device_pnp"\n' +
        '[dshow @ 01] DirectShow audio devices\r\n[dshow @ 01]  "Headset (USB)"\r\n[dshow @ 01]     Alternative name "@device_cm"',
    ],
    [
      'new layout',
      '[dshow @ 01] "Camera" (video)\n[dshow @ 01]   Alternative name "@device_pnp"\n[dshow @ 01] "Headset (USB)" (audio)',
    ],
  ])('is found in the %s', (_layout, listing) => {
    expect(windowsMicrophone(listing)).toBe('Headset (USB)');
  });

  it.each(['', '[dshow @ 01] "Camera" (video)', 'Could not enumerate audio only devices (or none found).'])(
    'is nothing where none is listed: %o',
    listing => expect(windowsMicrophone(listing)).toBeUndefined(),
  );
});
