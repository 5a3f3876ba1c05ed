import { spawn } from 'node:child_process';
import { writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it, onTestFinished } from 'vitest';
import { CaptureSource, openMicrophone } from '../../../src/voice/audio/capture-source.ts';
import type { Recorder } from '../../../src/voice/audio/recorders.ts';
import { monotonicTimer } from '../../../src/voice/audio/timer.ts';
import { encodeWav } from '../../../src/voice/audio/wav-encode.ts';
import { VoiceError } from '../../../src/voice/errors.ts';
import type { Pcm } from '../../../src/voice/ports.ts';
import { startPulse } from '../../helpers/pulse.ts';
import { scratchFolder } from '../../helpers/scratch.ts';
import { sleepForever } from '../../helpers/simulated-timer.ts';
import { joined, tone } from '../../helpers/tones.ts';

/** A real program that behaves as a recorder might. */
const recorder = (script: string): Recorder => ({ program: process.execPath, args: ['-e', script] });
const capture = (recorders: readonly Recorder[], sleep = sleepForever) =>
  new CaptureSource(recorders, process.env, sleep);
const ignore = async () => {};

describe('the microphone, on a real sound server', () => {
  it('hears what is played, sample for sample', async () => {
    const pulse = await startPulse();
    const played = tone(0.5);
    // A sound server may swallow the head of a sound: some silence before it.
    const withLead = { ...played, samples: joined([tone(0.5, { peak: 0 }), played]) };
    const file = join(scratchFolder(), 'tone.wav');
    writeFileSync(file, encodeWav(withLead));
    const source = await openMicrophone({ surroundings: { platform: 'linux', env: pulse.env } });
    expect(source.description).toBe('microphone, 16000 Hz mono, through parec');
    const blocks: Pcm[] = [];
    let loudS = 0;
    let quietS = 0;
    const end = await source.run(async block => {
      if (blocks.length === 0) {
        const player = spawn('paplay', [`--device=${pulse.sink}`, file], { env: pulse.env, stdio: 'ignore' });
        onTestFinished(() => void player.kill());
      }
      blocks.push(block);
      const loud = block.samples.some(sample => Math.abs(sample) > 0.1);
      if (loud) loudS += block.samples.length / block.sampleRateHz;
      else if (loudS > 0) quietS += block.samples.length / block.sampleRateHz;
      if (quietS > 0.1) source.close();
    });
    expect(end).toEqual({ kind: 'finished' });
    expect(blocks.every(block => block.samples.length <= 320)).toBe(true);
    const heard = joined(blocks);
    const start = heard.findIndex(sample => sample !== 0) - 1;
    const off = played.samples.map((sample, i) => Math.abs(sample - (heard[start + i] ?? Number.NaN)));
    expect(Math.max(...off)).toBeLessThan(1 / 32_768);
  });

  it('that breaks down midway is reported as lost, in one sentence', async () => {
    const pulse = await startPulse();
    const source = await openMicrophone({ surroundings: { platform: 'linux', env: pulse.env } });
    let blocks = 0;
    const end = await source.run(async () => {
      if (++blocks === 5) await pulse.kill();
    });
    expect(end).toEqual({
      kind: 'lost',
      reason: expect.stringMatching(
        /^The microphone was lost \(parec: [^\n]+\); connect a microphone[^\n]*\.$/,
      ),
    });
  });

  it('that cannot be reached by any recorder is refused in one sentence', async () => {
    const env = { ...process.env, PULSE_SERVER: 'unix:/no/such/socket', AUDIODRIVER: 'alsa' };
    const source = await openMicrophone({
      surroundings: { platform: 'linux', env },
      sleep: monotonicTimer.sleep,
    });
    const run = source.run(ignore);
    await expect(run).rejects.toBeInstanceOf(VoiceError);
    await expect(run).rejects.toThrow(
      /^No microphone gives sound \(parec: [^\n]+; arecord: [^\n]+\); connect[^\n]*\.$/,
    );
  });
});

describe('a recorder', () => {
  it('that is not installed is named', async () => {
    const surroundings = { platform: 'linux' as const, env: { PATH: '/no/such/folder' } };
    await expect(openMicrophone({ surroundings })).rejects.toThrow(
      'No sound recorder is installed (looked for parec, arecord, rec, ffmpeg); install one, or answer by keys.',
    );
  });

  it('on Windows is ffmpeg, and its lack is said', async () => {
    const surroundings = { platform: 'win32' as const, env: { PATH: '/no/such/folder' } };
    await expect(openMicrophone({ surroundings })).rejects.toThrow(/looked for ffmpeg/);
  });

  it('that vanished after it was found is an error too, not a crash', async () => {
    const gone = { program: '/no/such/recorder', args: [] };
    await expect(capture([gone]).run(ignore)).rejects.toThrow(/No microphone gives sound \(.*ENOENT\)/);
  });

  it('that ends midway means that the microphone is lost, even when it ends without an error', async () => {
    const end = await capture([recorder('process.stdout.write(Buffer.alloc(640))')]).run(ignore);
    expect(end).toEqual({ kind: 'lost', reason: expect.stringContaining('exit code 0') });
  });

  it('that hangs is given up: lost when it had delivered, passed over when it had not', async () => {
    const hang = 'setInterval(() => {}, 1000);';
    let chunks = 0;
    // The first wait is for sound that comes; the limit of the second passes at once.
    const second = (ms: number, signal: AbortSignal) =>
      ++chunks > 1 ? Promise.resolve() : sleepForever(ms, signal);
    const lost = await capture([recorder(`process.stdout.write(Buffer.alloc(640));${hang}`)], second).run(
      ignore,
    );
    expect(lost).toEqual({ kind: 'lost', reason: expect.stringContaining('no sound for 3 s') });
    const never = capture([recorder(hang)], () => Promise.resolve()).run(ignore);
    await expect(never).rejects.toThrow(/no sound for 3 s/);
  });

  it('that refuses is passed over for the next', async () => {
    let samples = 0;
    const refuses = recorder('console.error("no device"); process.exit(1)');
    const works = recorder('process.stdout.write(Buffer.alloc(6400))');
    const end = await capture([refuses, works]).run(async block => {
      samples += block.samples.length;
    });
    expect([samples, end.kind]).toEqual([3200, 'lost']);
  });

  it('may split a sample over two deliveries', async () => {
    const script =
      'process.stdout.write(Buffer.from([0]));setTimeout(() => process.stdout.write(Buffer.from([64, 0])), 20)';
    const heard: Pcm[] = [];
    await capture([recorder(script)]).run(async block => void heard.push(block));
    expect([...joined(heard)]).toEqual([0.5]);
  });

  it('is not started when the source was closed before', async () => {
    const source = capture([{ program: '/no/such/recorder', args: [] }]);
    source.close();
    expect(await source.run(ignore)).toEqual({ kind: 'finished' });
  });
});
