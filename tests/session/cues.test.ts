import { mkdirSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { type Cue, loadCueSheet } from '../../src/session/cue-sheet.ts';
import { CueSource, type Listening } from '../../src/session/cue-source.ts';
import { encodeWav } from '../../src/voice/audio/wav-encode.ts';
import { VoiceError } from '../../src/voice/errors.ts';
import type { Pcm } from '../../src/voice/ports.ts';
import { scratchFolderForAll } from '../helpers/scratch.ts';

const BLOCK_MS = 20;
const sound = (ms: number, value = 0.5): Pcm => ({
  sampleRateHz: 16_000,
  samples: new Float32Array(16 * ms).fill(value),
});

describe('a sheet of recorded replies', () => {
  const folder = scratchFolderForAll();
  const path = join(folder, 'cues.json');
  mkdirSync(join(folder, 'wav'));
  writeFileSync(join(folder, 'wav', 'yes.wav'), encodeWav(sound(40)));
  const good = { when: 'job.card.asking', says: 'card is right', wav: 'wav/yes.wav' };
  const load = (sheet: unknown) => {
    writeFileSync(path, typeof sheet === 'string' ? sheet : JSON.stringify(sheet));
    return loadCueSheet(path);
  };
  const sheet = (...cues: readonly object[]) => ({
    schema: 'first-fire-cues/1',
    title: 'a session',
    made: 'by hand',
    cues,
  });

  it('gives each reply with its place, its pause and its sound, in order', async () => {
    const cues = await load(sheet(good, { ...good, says: 'again', afterMs: 0 }));
    expect(cues.map(({ when, says, afterMs }) => [when, says, afterMs])).toEqual([
      ['job.card.asking', 'card is right', 600],
      ['job.card.asking', 'again', 0],
    ]);
    for (const cue of cues) {
      expect(cue.sound.sampleRateHz).toBe(16_000);
      expect(cue.sound.samples).toHaveLength(640);
    }
  });

  it('that cannot be used is told by what is wrong with it', async () => {
    const refused = (what: unknown) =>
      load(what).then(
        () => 'read',
        (error: unknown) => (error instanceof VoiceError ? [error.code, error.message] : error),
      );
    expect(await refused('no JSON')).toEqual([
      'fileUnusable',
      `${path} is neither a WAV file nor a cue sheet in JSON: it does not begin with "{"; name one of these.`,
    ]);
    expect(await refused('7')).toEqual(['fileUnusable', expect.stringMatching(/: the sheet: .+\.$/)]);
    expect(await refused({ ...sheet(good), schema: 'other' })).toEqual([
      'fileUnusable',
      expect.stringMatching(/cues\.json: schema: .+\.$/),
    ]);
    for (const [name, value] of [
      ['when', ''],
      ['says', ''],
      ['wav', ''],
      ['afterMs', -1],
      ['afterMs', 600_001],
      ['loud', true],
    ] as const)
      expect(await refused(sheet(good, { ...good, [name]: value })), name).toEqual([
        'fileUnusable',
        expect.stringMatching(/cues\.json: cues\.1/),
      ]);
    expect(await refused(sheet())).toEqual(['fileUnusable', expect.stringMatching(/: cues: /)]);
    for (const name of ['title', 'made'])
      expect(await refused({ ...sheet(good), [name]: '' })).toEqual([
        'fileUnusable',
        expect.stringContaining(`: ${name}: `),
      ]);
    expect(await refused(sheet({ ...good, wav: 'wav/no.wav' }))).toEqual([
      'fileUnusable',
      expect.stringMatching(
        /wav\/no\.wav cannot be read: there is no such file or folder; check the path and that you may read it\.$/,
      ),
    ]);
  });

  it('that is not there is told so', async () => {
    await expect(loadCueSheet(join(folder, 'none.json'))).rejects.toThrow(
      /none\.json cannot be read: there is no such file/,
    );
  });
});

describe('people on a recording', () => {
  const cue = (when: string, says: string, ms = 40, afterMs = 600): Cue => ({
    when,
    says,
    afterMs,
    sound: sound(ms, says.length / 100),
  });

  /** What is heard, block by block, while the tool is where `listening` says after so many of them. */
  async function heard(
    cues: readonly Cue[],
    listening: (blocks: number, said: readonly string[]) => Listening,
    most = 100_000,
  ) {
    const blocks: Pcm[] = [];
    const loud: Pcm[] = [];
    const spoken: string[] = [];
    let count = 0;
    let nowMs = 0;
    const waits: number[] = [];
    const source: CueSource = new CueSource('a recording', cues, () => listening(count, spoken), {
      nowMs: () => nowMs,
      waitUntilMs: async atMs => {
        waits.push(atMs);
        nowMs = atMs;
      },
    });
    const end = await source.run(async block => {
      // Of half an hour of near-silence the beginning is enough.
      count += 1;
      if (count <= 1000) blocks.push(block);
      const [first = 0] = block.samples;
      if (Math.abs(first) > 0.01) {
        loud.push(block);
        spoken.push(first.toFixed(2));
      }
      if (count >= most) source.close();
    });
    return { source, end, blocks, count, loud, waits };
  }
  const quiet = (key: string): Listening => ({ key, speaking: false });

  it('say what they are asked for once the tool has been silent for their pause', async () => {
    const { blocks, end } = await heard([cue('a', 'one')], (_, said) => quiet(said.length > 1 ? 'b' : 'a'));
    const first = blocks.findIndex(({ samples }) => Math.abs(samples[0] ?? 0) > 0.01);
    expect(first * BLOCK_MS).toBe(600);
    expect(end).toEqual({ kind: 'finished' });
  });

  it('wait while the tool speaks, and count their pause from its end', async () => {
    const { blocks } = await heard([cue('a', 'one')], (count, said) => ({
      key: said.length > 1 ? 'b' : 'a',
      speaking: count < 100,
    }));
    const first = blocks.findIndex(({ samples }) => Math.abs(samples[0] ?? 0) > 0.01);
    expect(first).toBe(100 + 600 / BLOCK_MS);
  });

  it('wait for their question, and say no more of it when it is answered', async () => {
    const cues = [cue('a', 'one'), cue('b', 'three')];
    const { loud } = await heard(cues, (_, said) => {
      if (said.length >= 4) return quiet('c');
      return quiet(said.length >= 2 ? 'b' : 'a');
    });
    expect(loud.map(({ samples }) => (samples[0] ?? 0).toFixed(2))).toEqual(['0.03', '0.03', '0.05', '0.05']);
  });

  it('repeat themselves where they are not understood: after 2.5 s, and three times in all', async () => {
    const { blocks, loud } = await heard([cue('a', 'one', 20)], () => quiet('a'));
    expect(loud).toHaveLength(3);
    const [first = 0, second = 0] = blocks.flatMap(({ samples }, i) =>
      Math.abs(samples[0] ?? 0) > 0.01 ? [i] : [],
    );
    expect((second - first - 1) * BLOCK_MS).toBe(2500);
  });

  it('give up after half an hour in which they were not asked', async () => {
    const { end, count } = await heard([cue('a', 'one')], () => quiet('b'));
    expect(end).toEqual({ kind: 'lost', reason: '"one" waits for a, but the session is at b.' });
    expect(count * BLOCK_MS).toBe(30 * 60 * 1000);
  });

  it('leave a room that goes on for five seconds, and that is never quite silent', async () => {
    const { blocks, end } = await heard([], () => quiet('a'));
    expect(blocks.length * BLOCK_MS).toBe(5000);
    expect(end).toEqual({ kind: 'finished' });
    const samples = blocks.flatMap(block => [...block.samples]);
    expect(blocks.every(block => block.sampleRateHz === 16_000 && block.samples.length === 320)).toBe(true);
    const most = samples.reduce((peak, each) => Math.max(peak, Math.abs(each)), 0);
    expect(most).toBeLessThanOrEqual(1 / 32_768);
    expect(most).toBeGreaterThan(0.9 / 32_768);
    const mean = samples.reduce((sum, each) => sum + each, 0) / samples.length;
    expect(Math.abs(mean)).toBeLessThan(0.05 / 32_768);
    const again = await heard([], () => quiet('a'));
    expect(again.blocks.slice(0, 3)).toEqual(blocks.slice(0, 3));
  });

  it('are in time: each block at its moment', async () => {
    const { waits } = await heard([], () => quiet('a'));
    expect(waits.slice(0, 3)).toEqual([20, 40, 60]);
  });

  it('fall silent when the source is closed', async () => {
    for (const most of [5, 31, 100]) {
      const { blocks, end, source } = await heard([cue('a', 'one'), cue('b', 'two')], () => quiet('a'), most);
      expect(blocks.length).toBeLessThanOrEqual(most + 1);
      expect(end).toEqual({ kind: 'finished' });
      expect(source.description).toBe('a recording');
    }
  });

  it('are heard as fast as they are taken, where nobody waits', async () => {
    const source = new CueSource('a recording', [], () => quiet('a'), { nowMs: () => 0 });
    let blocks = 0;
    await source.run(async () => {
      blocks += 1;
    });
    expect(blocks).toBe(250);
  });
});
