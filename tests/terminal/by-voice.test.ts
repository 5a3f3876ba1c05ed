import { mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, describe, expect, it } from 'vitest';
import type { Entry } from '../../src/record/index.ts';
import { readLog, verifyLog } from '../../src/record/index.ts';
import { firstFire } from '../helpers/first-fire.ts';

const folder = mkdtempSync(join(tmpdir(), 'by-voice-'));
afterAll(() => rmSync(folder, { recursive: true, force: true }));

const LONG = 15 * 60_000;

const events = (entries: readonly Entry[]) => entries.filter(entry => entry.kind === 'event');

/** Runs a recorded session to its end, and gives back its record. */
async function hearSession(sound: string, profile: string, name: string, more: readonly string[] = []) {
  const log = join(folder, `${name}.jsonl`);
  const ran = await firstFire(['--profile', profile, '--hear', sound, '--fast', '--log', log, ...more]);
  return { ran, log, entries: (await readLog(log)).entries };
}

describe('a whole first start, driven by sound alone', () => {
  it(
    'ends signed off on an engine with two fuel filters and an intake heater',
    async () => {
      const { ran, log, entries } = await hearSession(
        'audio-fixtures/sessions/demo-six.cues.json',
        'demo-six',
        'six',
      );
      expect(ran.exitCode, ran.stderr).toBe(0);
      expect(entries.find(entry => entry.kind === 'closed')?.data).toMatchObject({ outcome: 'signedOff' });
      expect(await verifyLog(log)).toMatchObject({ ok: true });
      // Nothing but the recognizer and the clock has moved the machine.
      expect(new Set(events(entries).map(entry => entry.data.via))).toEqual(new Set(['voice', 'tool']));
    },
    LONG,
  );

  it(
    'goes the same way when all that was heard is played again as one recording',
    async () => {
      const wav = join(folder, 'four.wav');
      const cues = 'audio-fixtures/sessions/demo-four.cues.json';
      const first = await hearSession(cues, 'demo-four', 'four', ['--keep-audio', wav]);
      expect(first.ran.exitCode, first.ran.stderr).toBe(0);
      expect(readFileSync(wav).length).toBeGreaterThan(10_000_000);

      const again = await hearSession(wav, 'demo-four', 'again');
      expect(again.ran.exitCode, again.ran.stderr).toBe(0);
      const said = (entries: readonly Entry[]) =>
        events(entries).map(({ data }) => [data.type, data.id ?? data.si ?? null, data.state]);
      expect(said(again.entries)).toEqual(said(first.entries));
    },
    LONG,
  );
});
