import { mkdtempSync, readdirSync, readFileSync, truncateSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { Command } from 'commander';
import { beforeEach, expect, it, vi } from 'vitest';
import { english } from '../../prompts/en/index.ts';
import { registerModel } from '../../src/terminal/model-command.ts';
import { wordsOf } from '../../src/voice/wording.ts';
import { hollowModel, zippedModel } from '../voice/decoders/vosk/model-files.ts';

let folder: string;
beforeEach(() => {
  folder = mkdtempSync(join(tmpdir(), 'models-'));
});
const at = (name: string) => join(folder, name);

/** Runs one command as the command line does; gives what it printed. */
async function run(...words: readonly string[]): Promise<string> {
  const lines: string[] = [];
  const spy = vi.spyOn(console, 'log').mockImplementation((line: unknown) => void lines.push(String(line)));
  const program = new Command('first-fire').exitOverride();
  registerModel(program);
  try {
    await program.parseAsync(['model', ...words, '--models', at('kept')], { from: 'user' });
    return lines.join('\n');
  } finally {
    spy.mockRestore();
  }
}

async function bring(name = 'brought.zip', readme = 'first') {
  const words = new TextEncoder().encode(`<eps> 0\n${wordsOf(english.stopWordings).join(' 1\n')} 1\n`);
  const files = { ...hollowModel(), 'graph/words.txt': words, README: new TextEncoder().encode(readme) };
  writeFileSync(at(name), Buffer.from(await zippedModel(files).arrayBuffer()));
  return at(name);
}

it('keeps a model that is brought, shows its SHA-256, lists it and takes it out again', async () => {
  const file = await bring();
  const added = await run('add', file);
  expect(added).toMatch(/SHA-256 [0-9a-f]{64}/);
  expect(await run('list')).toMatch(/^small-en: .* unpacked, SHA-256 [0-9a-f]{64}$/);
  expect(readdirSync(at('kept')).sort()).toEqual(['small-en.json', 'small-en.tar.gz']);
  await run('remove', 'small-en');
  expect(await run('list')).toContain('No models in');
  expect(readdirSync(at('kept'))).toEqual([]);
});

it('compares the SHA-256 with the one that is given, and does not keep what has another', async () => {
  const file = await bring();
  const sha256 = /SHA-256 ([0-9a-f]{64})/.exec(await run('add', file))?.[1] ?? '';
  await run('remove', 'small-en');
  await expect(run('add', file, '--sha256', 'f'.repeat(64))).rejects.toThrow(/not the one that was given/);
  await expect(run('add', file, '--sha256', 'abc')).rejects.toThrow(/is no SHA-256/);
  expect(await run('list')).toContain('No models in');
  expect(await run('add', file, '--sha256', sha256.toUpperCase())).toContain('Kept as small-en');
});

it('leaves a model as it is when it comes again, and refuses another one of the same name', async () => {
  await run('add', await bring());
  const before = readFileSync(at('kept/small-en.json'), 'utf8');
  await run('add', await bring());
  expect(readFileSync(at('kept/small-en.json'), 'utf8')).toBe(before);
  await expect(run('add', await bring('other.zip', 'second'))).rejects.toThrow(
    /another model named small-en .*model remove small-en/,
  );
});

it('refuses in one sentence what is not there, no file, or no model', async () => {
  await expect(run('add', at('nothing.zip'))).rejects.toThrow(
    /nothing\.zip cannot be read: there is no such file or folder; give the path/,
  );
  await expect(run('add', folder)).rejects.toThrow(/is no file; give the zip/);
  writeFileSync(at('page.zip'), '<!doctype html>');
  await expect(run('add', at('page.zip'))).rejects.toThrow(/page\.zip is neither a zip nor a tar\.gz;/);
  await expect(run('remove', '../brought')).rejects.toThrow(/no model named "\.\.\/brought"/);
});

it('does not offer a kept model that lost its end, or whose description was changed', async () => {
  await run('add', await bring());
  truncateSync(at('kept/small-en.tar.gz'), 100);
  expect(await run('list')).toContain('No models in');
  await run('add', at('brought.zip'));
  expect(await run('list')).toContain('small-en');
  writeFileSync(
    at('kept/evil.json'),
    readFileSync(at('kept/small-en.json'), 'utf8').replace('"small-en"', '"../brought"'),
  );
  expect((await run('list')).split('\n')).toHaveLength(1);
});
