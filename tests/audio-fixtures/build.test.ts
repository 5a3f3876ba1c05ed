import { createHash } from 'node:crypto';
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, it } from 'vitest';
import { buildFixtures, readPhrases, slugOf } from '../../audio-fixtures/build.ts';
import { everyReply } from '../../audio-fixtures/every-reply.ts';
import { VOICES } from '../../audio-fixtures/voices.ts';
import { scratchFolder } from '../helpers/scratch.ts';

it('every wording of the procedure has a file of its own', () => {
  expect(readPhrases(JSON.stringify(everyReply), 'every reply')).toContain('stop');
});

it.each([
  ['no JSON', 'yes, no'],
  ['no list', '{"yes": 1}'],
  ['an empty list', '[]'],
  ['an empty phrase', '["yes", " "]'],
])('%s is refused as a list of phrases, in one sentence', (_what, json) => {
  expect(() => readPhrases(json, 'list.json')).toThrow(
    /^list\.json is no list of phrases \([^\n]+\); give a JSON array/,
  );
});

it('two phrases that would share a file are refused', () => {
  expect(() => readPhrases('["Go back!", "go back"]', 'list.json')).toThrow(
    /two phrases for the file "go-back"/,
  );
});

it('a phrase makes a file name of its words', () => {
  expect(slugOf('Oil pressure: 45 psi?')).toBe('oil-pressure-45-psi');
});

it('each phrase is made in each voice, and the manifest says how and vouches for the bytes', () => {
  const folder = join(scratchFolder(), 'made');
  const fixtures = buildFixtures(['oil pressure forty five'], folder);
  expect(fixtures.map(({ voice }) => voice)).toEqual(VOICES.map(({ name }) => name));
  expect(JSON.parse(readFileSync(join(folder, 'manifest.json'), 'utf8'))).toEqual(fixtures);
  for (const { file, sha256, command, transcript } of fixtures) {
    expect(
      createHash('sha256')
        .update(readFileSync(join(folder, file)))
        .digest('hex'),
    ).toBe(sha256);
    expect(command).toContain(transcript);
  }
});
