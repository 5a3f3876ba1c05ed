import { readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { SoundSource } from '../../../src/voice/audio/file-source.ts';
import { decodeWav } from '../../../src/voice/audio/wav.ts';
import { keepAsWav } from '../../../src/voice/audio/wav-tee.ts';
import type { AudioSource, Pcm } from '../../../src/voice/ports.ts';
import { scratchFolder } from '../../helpers/scratch.ts';
import { joined, tone } from '../../helpers/tones.ts';

const never = (sentence: string) => {
  throw new Error(sentence);
};
/** A source that hands out these blocks. */
const blocks = (...sounds: Pcm[]): AudioSource => ({
  description: 'blocks',
  run: async onBlock => {
    for (const sound of sounds) await onBlock(sound);
    return { kind: 'finished' };
  },
  close: () => undefined,
});

describe('keeping what is heard', () => {
  it('writes every sample and hands every block on unchanged', async () => {
    const file = join(scratchFolder(), 'session.wav');
    const sound = tone(0.33);
    const source = await keepAsWav(new SoundSource('bay', sound, 'fast'), file, never);
    expect(source.description).toBe('bay');
    const heard: Pcm[] = [];
    expect(await source.run(async block => void heard.push(block))).toEqual({ kind: 'finished' });
    expect(joined(heard)).toEqual(sound.samples);
    const kept = decodeWav(readFileSync(file), file);
    expect(kept.samples.length).toBe(sound.samples.length);
    expect(
      Math.max(...kept.samples.map((sample, i) => Math.abs(sample - (sound.samples[i] ?? 9)))),
    ).toBeLessThan(1e-4);
  });

  it('leaves a readable file at every moment, as after a power loss', async () => {
    const file = join(scratchFolder(), 'session.wav');
    const source = await keepAsWav(blocks(tone(0.02), tone(0.02)), file, never);
    const lengths: number[] = [];
    await source.run(async () => void lengths.push(decodeWav(readFileSync(file), file).samples.length));
    expect(lengths).toEqual([320, 640]);
  });

  it('closes the source when it is closed, and keeps what was heard until then', async () => {
    const file = join(scratchFolder(), 'session.wav');
    const source = await keepAsWav(new SoundSource('bay', tone(10), 'fast'), file, never);
    await source.run(async () => source.close());
    expect(decodeWav(readFileSync(file), file).samples.length).toBe(320);
  });

  it('never overwrites a file', async () => {
    const file = join(scratchFolder(), 'session.wav');
    writeFileSync(file, 'precious');
    await expect(keepAsWav(blocks(), file, never)).rejects.toThrow(
      /^The sound is not kept in .*there is such a file already.*\.$/,
    );
    expect(readFileSync(file, 'utf8')).toBe('precious');
  });

  it('that fails midway is told once, and hearing goes on', async () => {
    const problems: string[] = [];
    const faster = tone(0.02, { sampleRateHz: 44_100 });
    const source = await keepAsWav(
      blocks(tone(0.02), faster, faster),
      join(scratchFolder(), 'session.wav'),
      sentence => problems.push(sentence),
    );
    let heard = 0;
    await source.run(async () => {
      heard++;
    });
    expect(heard).toBe(3);
    expect(problems).toEqual([expect.stringContaining('the rate changed from 16000 to 44100 Hz')]);
  });
});
