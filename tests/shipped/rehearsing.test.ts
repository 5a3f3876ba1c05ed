import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { verifyLog } from '../../src/record/index.ts';
import { firstFire, startFirstFire } from '../helpers/first-fire.ts';
import { scratchFolder } from '../helpers/scratch.ts';

describe('a rehearsal', () => {
  it('goes through the whole start by itself with nobody at the keys, and writes its debrief', async () => {
    const folder = scratchFolder();
    const [log, json] = [join(folder, 'r.jsonl'), join(folder, 'debrief.json')];
    const args = ['rehearse', '--by-itself', '--speed', '60', '--log', log, '--json', json];
    const { exitCode, stdout, stderr } = await firstFire(args);
    expect(exitCode, stderr).toBe(0);
    expect(stdout).toContain('Debrief: signed off after');
    expect(JSON.parse(readFileSync(json, 'utf8'))).toMatchObject({ outcome: 'signedOff', faults: [] });
    expect(await verifyLog(log)).toMatchObject({ ok: true });
  });

  it('by keys shows the engine, takes what is typed, and is left at the end of the keys with a debrief', async () => {
    const log = join(scratchFolder(), 'r.jsonl');
    const rehearsal = startFirstFire(['rehearse', '--no-mic', '--silent', '--log', log], { keys: 'typed' });
    await rehearsal.tells('Say: "card is right"');
    expect(rehearsal.told).toContain('ENGINE: ');
    rehearsal.type('card is right');
    await rehearsal.tells('Say: "understood"');
    rehearsal.closeKeys();
    const { exitCode, stdout, stderr } = await rehearsal.ended;
    expect(exitCode, stderr).toBe(4);
    expect(stdout).toContain('Debrief: left before its end');
    expect(await verifyLog(log)).toMatchObject({ ok: true });
  });

  it('says in one sentence which fault it does not know', async () => {
    const { exitCode, stderr } = await firstFire(['rehearse', '--fault', 'noSuchFault', '--by-itself']);
    expect(stderr.trim().split('\n')).toHaveLength(1);
    expect(stderr).toContain('noSuchFault');
    expect(exitCode).toBe(1);
  });
});
