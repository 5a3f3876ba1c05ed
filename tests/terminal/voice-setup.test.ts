import { mkdtempSync, readFileSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { Command } from 'commander';
import { expect, it, vi } from 'vitest';
import { synthesize } from '../../audio-fixtures/synthesize.ts';
import { registerVoiceSetup } from '../../src/terminal/voice-setup/command.ts';
import { loadSpeaker } from '../../src/terminal/voice-setup/profile-file.ts';
import { heldOutPrompts, trainingPrompts } from '../../src/terminal/voice-setup/prompts.ts';
import { encodeWav } from '../../src/voice/audio/wav-encode.ts';
import { createMatcher } from '../../src/voice/meaning.ts';
import type { Prompt } from '../../src/voice/speaker-profile/trial.ts';

const prompts = [...trainingPrompts, ...heldOutPrompts];
const folder = mkdtempSync(join(tmpdir(), 'voice-setup-'));

async function run(...words: readonly string[]): Promise<string> {
  const lines: string[] = [];
  const spy = vi.spyOn(console, 'log').mockImplementation((line: unknown) => void lines.push(String(line)));
  const program = new Command('first-fire').exitOverride();
  registerVoiceSetup(program);
  try {
    await program.parseAsync(['voice-setup', ...words, '--speakers', join(folder, 'speakers')], {
      from: 'user',
    });
    return lines.join('\n');
  } finally {
    spy.mockRestore();
  }
}

it('has some twenty prompts, each with a meaning, and holds out some of every kind', () => {
  expect(prompts.length).toBeGreaterThanOrEqual(20);
  for (const { text, grammar } of prompts)
    expect([text, createMatcher(grammar).meaningOf(text)?.kind]).not.toContain(undefined);
  const kinds = (of: readonly Prompt[]) =>
    new Set(of.map(({ text, grammar }) => createMatcher(grammar).meaningOf(text)?.kind));
  expect(kinds(heldOutPrompts)).toEqual(new Set(['number', 'reply', 'stop']));
  // Nobody agrees here who is not near: a radio has no part in a profile.
  for (const { text, grammar } of prompts)
    expect([text, grammar.agreement]).toEqual([text, grammar.key.endsWith('readBack') ? 'yes' : undefined]);
  const trained = new Set(trainingPrompts.map(({ text }) => text));
  expect(heldOutPrompts.filter(({ text }) => trained.has(text))).toEqual([]);
});

it('measures a recorded voice, tells before and after on the held-out prompts, and writes what may be used', async () => {
  const wavs = mkdtempSync(join(folder, 'ada-'));
  prompts.forEach(({ text }, i) => {
    const { samples, sampleRateHz } = synthesize('flite-slt', text);
    // From far away: a twentieth of the level.
    const faint = { samples: samples.map(sample => sample / 20), sampleRateHz };
    writeFileSync(join(wavs, `${String(i + 1).padStart(2, '0')}.wav`), encodeWav(faint));
  });
  const told = await run('Ada', '--from', wavs);
  const profile = await loadSpeaker(join(folder, 'speakers'), 'Ada');
  const { before, after } = profile.heldOut;
  expect(before.right + before.unclear + before.wrong).toBe(heldOutPrompts.length);
  expect(after.wrong).toBeLessThanOrEqual(before.wrong);
  expect(profile.levels.speechDbfs).toBeLessThan(-35);
  expect(told).toMatch(/The microphone is faint: bring it nearer, or turn it up by \d+ dB\./);
  expect(told).toContain(`Held-out prompts before: ${before.right} right, ${before.unclear} unclear`);
  expect(told).toMatch(/Kept: |Nothing made it better: the shipped settings stay\./);
  for (const { text } of prompts) expect(told).toContain(text);
});

it('refuses in one sentence a folder with too few recordings, silence, and a name that is no file', async () => {
  const wavs = mkdtempSync(join(folder, 'few-'));
  await expect(run('Ben', '--from', wavs)).rejects.toThrow(/has 0 WAV files; give \d+, one for each prompt/);
  await expect(run('Ben', '--from', join(folder, 'nowhere'))).rejects.toThrow(/give a folder of WAV files/);
  for (let i = 0; i < prompts.length; i += 1) {
    const silence = { samples: new Float32Array(8000), sampleRateHz: 16_000 };
    writeFileSync(join(wavs, `${String(i).padStart(2, '0')}.wav`), encodeWav(silence));
  }
  await expect(run('Ben', '--from', wavs)).rejects.toThrow(/Hardly anything was heard/);
  await expect(loadSpeaker(folder, '../Ben')).rejects.toThrow(/is no name/);
  await expect(loadSpeaker(folder, 'Ben')).rejects.toThrow(/no speaker "Ben".*voice-setup Ben/);
});

it('does not load a file that was changed beyond what is safe', async () => {
  const path = join(folder, 'speakers', 'Ada.json');
  writeFileSync(
    path,
    readFileSync(path, 'utf8').replace(/"leastCertainty": [\d.]+/, '"leastCertainty": 0.2'),
  );
  await expect(loadSpeaker(join(folder, 'speakers'), 'Ada')).rejects.toThrow(
    /Ada\.json cannot be used: adaptation\.leastCertainty: .*; measure again/,
  );
});
