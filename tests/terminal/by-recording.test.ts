import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, it } from 'vitest';
import type { Entry } from '../../src/record/index.ts';
import { scratchFolder } from '../helpers/scratch.ts';
import { events, hearSession, WHOLE_START_MS } from './support/heard-session.ts';

it(
  'a whole first start goes the same way when all that was heard is played again as one recording',
  async () => {
    const wav = join(scratchFolder(), 'four.wav');
    const cues = 'audio-fixtures/sessions/demo-four.cues.json';
    const first = await hearSession(cues, 'demo-four', ['--keep-audio', wav]);
    expect(first.ran.exitCode, first.ran.stderr).toBe(0);
    expect(readFileSync(wav).length).toBeGreaterThan(10_000_000);

    const again = await hearSession(wav, 'demo-four');
    expect(again.ran.exitCode, again.ran.stderr).toBe(0);
    const said = (entries: readonly Entry[]) =>
      events(entries).map(({ data }) => [data.type, data.id ?? data.si ?? null, data.state]);
    expect(said(again.entries)).toEqual(said(first.entries));
  },
  WHOLE_START_MS,
);
