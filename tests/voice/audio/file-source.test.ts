import { writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { openWavFile, SoundSource } from '../../../src/voice/audio/file-source.ts';
import { encodeWav } from '../../../src/voice/audio/wav-encode.ts';
import type { Pcm } from '../../../src/voice/ports.ts';
import { scratchFolder } from '../../helpers/scratch.ts';
import { SimulatedTimer } from '../../helpers/simulated-timer.ts';
import { joined, tone } from '../../helpers/tones.ts';

describe('a file as a source of sound', () => {
  it('says what it is and delivers every sample in order in 20 ms blocks', async () => {
    const file = join(scratchFolder(), 'reply.wav');
    writeFileSync(file, encodeWav(tone(0.11, { sampleRateHz: 44_100 })));
    const source = await openWavFile(file, 'fast');
    expect(source.description).toBe('reply.wav, 44100 Hz mono');
    const blocks: Pcm[] = [];
    expect(await source.run(async block => void blocks.push(block))).toEqual({ kind: 'finished' });
    expect(blocks.map(block => block.samples.length)).toEqual([882, 882, 882, 882, 882, 441]);
    expect(joined(blocks).length).toBe(4851);
  });

  it.each(['/no/such/file.wav', '/'])('that cannot be read (%s) is refused in one sentence', async path => {
    await expect(openWavFile(path, 'fast')).rejects.toThrow(
      /^\S+ cannot be read: (there is no such file or folder|it is a folder); check the path[^\n]*\.$/,
    );
  });

  it('never runs ahead of a slow listener', async () => {
    let listening = 0;
    await new SoundSource('x', tone(0.2), 'fast').run(async () => {
      expect(++listening).toBe(1);
      await Promise.resolve();
      listening--;
    });
  });

  it('in real time delivers each block when its last sample would have been heard', async () => {
    const timer = new SimulatedTimer();
    const atMs: number[] = [];
    await new SoundSource('x', tone(0.1), 'realTime', timer).run(async () => void atMs.push(timer.timeMs));
    expect(atMs).toEqual([20, 40, 60, 80, 100]);
  });

  it('catches up after a listener was late, so that no delay adds up', async () => {
    const timer = new SimulatedTimer();
    const atMs: number[] = [];
    await new SoundSource('x', tone(0.1), 'realTime', timer).run(async () => {
      atMs.push(timer.timeMs);
      timer.timeMs += atMs.length === 1 ? 50 : 3;
    });
    expect(atMs).toEqual([20, 70, 73, 80, 100]);
  });

  it('keeps time at a rate that does not divide into 20 ms', async () => {
    const timer = new SimulatedTimer();
    await new SoundSource('x', tone(60, { sampleRateHz: 11_025 }), 'realTime', timer).run(async () => {});
    expect(timer.timeMs).toBeCloseTo(60_000, 3);
  });

  it.each(['fast', 'realTime'] as const)('stops at once when it is closed (%s)', async pace => {
    const source = new SoundSource('x', tone(10), pace, new SimulatedTimer());
    let blocks = 0;
    const end = await source.run(async () => {
      if (++blocks === 3) source.close();
    });
    expect([blocks, end]).toEqual([3, { kind: 'finished' }]);
  });

  it('passes on what the listener throws', async () => {
    const fault = new Error('deaf');
    const run = new SoundSource('x', tone(1), 'fast').run(() => Promise.reject(fault));
    await expect(run).rejects.toBe(fault);
  });
});
