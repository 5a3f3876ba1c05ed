import { describe, expect, it } from 'vitest';
import { openMicrophone } from '../../../src/voice/audio/capture-source.ts';
import type { Pcm } from '../../../src/voice/ports.ts';
import { DeviceSink } from '../../../src/voice/speakers/device-sink.ts';
import { type Player, playersFor } from '../../../src/voice/speakers/players.ts';
import { startPulse } from '../../helpers/pulse.ts';
import { sleepForever } from '../../helpers/simulated-timer.ts';
import { joined, tone } from '../../helpers/tones.ts';

/** A real program that behaves as a player might. */
const player = (script: string, feed: Player['feed'] = 'wav'): Player => ({
  program: process.execPath,
  feed,
  args: (_sound, path) => ['-e', script, path],
});
const sinkOf = (script: string, feed?: Player['feed']) =>
  new DeviceSink(player(script, feed), process.env, sleepForever);
const pacat = playersFor('linux')[0] ?? player('process.exit(9)');
const HANG = 'setInterval(() => {}, 1000)';

describe('the loudspeaker, on a real sound server', () => {
  it('plays what was given to it', async () => {
    const pulse = await startPulse();
    const microphone = await openMicrophone({ surroundings: { platform: 'linux', env: pulse.env } });
    const heard: Pcm[] = [];
    const sound = { ...tone(0.5), samples: joined([tone(0.5, { peak: 0 }), tone(0.5)]) };
    let playing: Promise<void> | undefined;
    let over = false;
    await microphone.run(async block => {
      heard.push(block);
      playing ??= new DeviceSink(pacat, pulse.env).play(sound, 'tone').then(() => {
        over = true;
      });
      const quiet = block.samples.every(sample => sample === 0);
      if (over && quiet) microphone.close();
    });
    await playing;
    const loud = joined(heard).filter(sample => sample !== 0).length;
    expect(loud).toBeGreaterThan(7_800);
    expect(loud).toBeLessThanOrEqual(8_000);
  });

  it('falls silent when it is cut, minutes before the end of the sound', async () => {
    const pulse = await startPulse();
    const microphone = await openMicrophone({ surroundings: { platform: 'linux', env: pulse.env } });
    const sink = new DeviceSink(pacat, pulse.env, sleepForever);
    let playing: Promise<void> | undefined;
    let over = false;
    await microphone.run(async block => {
      playing ??= sink.play(tone(120), 'two minutes').then(() => {
        over = true;
      });
      const quiet = block.samples.every(sample => sample === 0);
      if (!quiet) sink.cut();
      if (quiet && over) microphone.close();
    });
    await expect(playing).resolves.toBeUndefined();
  }, 60_000);

  it('that is not there is reported in one sentence', async () => {
    const env = { ...process.env, PULSE_SERVER: 'unix:/no/such/socket' };
    const playing = new DeviceSink(pacat, env).play(tone(0.1), 'x');
    await expect(playing).rejects.toThrow(/^The loudspeaker failed \(pacat: [^\n]+\); connect one[^\n]*\.$/);
  });
});

describe('a player', () => {
  it('is given the sound as a WAV file, as raw samples, or by name', async () => {
    const isWav = (bytes: string) => `process.exit(${bytes}.subarray(0, 4).toString() === 'RIFF' ? 0 : 3)`;
    const input = 'require("node:fs").readFileSync(0)';
    const file = 'require("node:fs").readFileSync(process.argv[1])';
    await sinkOf(isWav(input), 'wav').play(tone(0.1), 'x');
    await sinkOf(isWav(file), 'file').play(tone(0.1), 'x');
    await expect(sinkOf(isWav(input), 'raw').play(tone(0.1), 'x')).rejects.toThrow(/exit code 3/);
    await sinkOf(`process.exit(${input}.length === 3200 ? 0 : 3)`, 'raw').play(tone(0.1), 'x');
  });

  it('that ends before it took its sound is a failure, not a crash', async () => {
    await expect(sinkOf('process.exit(1)').play(tone(60), 'x')).rejects.toThrow(/exit code 1/);
  });

  it('that hangs is ended once the sound should long be over', async () => {
    const sink = new DeviceSink(player(HANG), process.env, async durationMs =>
      expect(durationMs).toBe(5_100),
    );
    await expect(sink.play(tone(0.1), 'x')).rejects.toThrow(/did not come to its end/);
  });

  it('that is not installed is a failure, not a crash', async () => {
    const missing = new DeviceSink(
      { program: '/no/player', feed: 'wav', args: () => [] },
      process.env,
      sleepForever,
    );
    await expect(missing.play(tone(0.1), 'x')).rejects.toThrow(/ENOENT/);
  });

  it.each(['wav', 'file'] as const)(
    'fed by %s can be cut before it has started',
    async feed => {
      const sink = sinkOf(HANG, feed);
      const playing = sink.play(tone(0.1), 'x');
      sink.cut();
      await expect(playing).resolves.toBeUndefined();
    },
    60_000,
  );

  it('may be cut when nothing is played', async () => {
    const sink = sinkOf('');
    sink.cut();
    await expect(sink.play(tone(0.1), 'x')).resolves.toBeUndefined();
    await expect(sink.close()).resolves.toBeUndefined();
  }, 60_000);
});
