import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, it } from 'vitest';
import { decodeWav } from '../../src/voice/audio/wav.ts';
import { startFirstFire } from '../helpers/first-fire.ts';
import { scratchFolder } from '../helpers/scratch.ts';
import { rms } from '../helpers/tones.ts';

/** Of full scale; a voice is well above it, silence and hum are not. */
const AUDIBLE = 0.01;

it('says every prompt into a folder of WAV files, each a voice of the length of its sentence', async () => {
  const folder = scratchFolder();
  const spoken = join(folder, 'spoken');
  const session = startFirstFire(['--no-mic', '--speak-to', spoken, '--log', join(folder, 'r.jsonl')], {
    keys: 'typed',
  });
  await session.tells('Say: "card is right"');
  session.type('card is right');
  await session.tells('Say: "understood"');
  session.type('say again');
  await session.tells('heard say again');
  session.closeKeys();
  const { exitCode, stderr } = await session.ended;
  expect(exitCode, stderr).toBe(4);

  const files = readdirSync(spoken).filter(name => name.endsWith('.wav'));
  expect(files.length).toBeGreaterThanOrEqual(2);
  for (const name of files) {
    const sound = decodeWav(readFileSync(join(spoken, name)), name);
    expect(rms(sound), name).toBeGreaterThan(AUDIBLE);
    expect(sound.samples.length / sound.sampleRateHz, name).toBeGreaterThan(0.5);
  }
});
