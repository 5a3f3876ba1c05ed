import { readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { decodeWav } from '../../../src/voice/audio/wav.ts';
import { SilentSink } from '../../../src/voice/speakers/silent-sink.ts';
import { openWavFolder } from '../../../src/voice/speakers/wav-folder-sink.ts';
import { scratchFolder } from '../../helpers/scratch.ts';
import { SimulatedTimer, sleepForever } from '../../helpers/simulated-timer.ts';
import { tone } from '../../helpers/tones.ts';

describe('silence in place of a loudspeaker', () => {
  it('takes as long as the sound', async () => {
    const timer = new SimulatedTimer();
    await new SilentSink(timer.sleep).play(tone(1.5), 'x');
    expect(timer.timeMs).toBe(1_500);
  });

  it('ends at once when it is cut, and a cut beforehand does no harm', async () => {
    const sink = new SilentSink(sleepForever);
    sink.cut();
    const playing = sink.play(tone(60), 'x');
    sink.cut();
    await expect(playing).resolves.toBeUndefined();
    const last = sink.play(tone(60), 'x');
    await sink.close();
    await expect(last).resolves.toBeUndefined();
  }, 10_000);
});

describe('a folder of WAV files in place of a loudspeaker', () => {
  it('is made, and holds each sentence under its number and label', async () => {
    const timer = new SimulatedTimer();
    const folder = join(scratchFolder(), 'said', 'today');
    const sink = await openWavFolder(folder, timer.sleep);
    await sink.play(tone(1), 'fill.coolantFull.ask');
    await sink.play(tone(0.5), '../Ölstand: ok?');
    await sink.play(tone(0.5), '???');
    expect(readdirSync(folder).sort()).toEqual([
      '0001-fill.coolantFull.ask.wav',
      '0002-Ölstand-ok.wav',
      '0003-speech.wav',
    ]);
    expect(decodeWav(readFileSync(join(folder, '0002-Ölstand-ok.wav')), 'x').samples.length).toBe(8_000);
    expect(timer.timeMs).toBe(2_000);
  });

  it('is added to when it holds files already', async () => {
    const folder = scratchFolder();
    for (const name of ['0007-old.wav', 'notes.txt']) writeFileSync(join(folder, name), '');
    const sink = await openWavFolder(folder, new SimulatedTimer().sleep);
    await sink.play(tone(0.1), 'new');
    expect(readdirSync(folder)).toContain('0008-new.wav');
  });

  it('that cannot be made is refused in one sentence', async () => {
    const file = join(scratchFolder(), 'file');
    writeFileSync(file, '');
    await expect(openWavFolder(file, sleepForever)).rejects.toThrow(
      /^Speech cannot be written to \S+ \(.*\); name a folder that you may write to\.$/,
    );
  });

  it('that goes away later fails the sentence at once, in one sentence', async () => {
    const folder = scratchFolder();
    const sink = await openWavFolder(join(folder, 'said'), sleepForever);
    rmSync(join(folder, 'said'), { recursive: true });
    await expect(sink.play(tone(1), 'x')).rejects.toThrow(/^Speech cannot be written to/);
  });
});
