import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { z } from 'zod';
import { verifyLog } from '../../src/record/index.ts';
import { firstFire, startFirstFire } from '../helpers/first-fire.ts';
import { scratchFolder } from '../helpers/scratch.ts';

const debriefSchema = z.object({
  outcome: z.enum(['signedOff', 'ended', 'left']),
  faults: z.array(z.object({ noticed: z.unknown() })),
  contradictions: z.array(z.unknown()),
});

describe('a rehearsal', () => {
  it('goes on by itself to its end with nobody at the keys, and says in its debrief what was noticed', async () => {
    const folder = scratchFolder();
    const [log, json] = [join(folder, 'r.jsonl'), join(folder, 'debrief.json')];
    const args = ['rehearse', '--by-itself', '--speed', '60', '--fault', 'noOilPressure@noFuelCrank'];
    const { exitCode, stdout, stderr } = await firstFire([...args, '--log', log, '--json', json]);
    const { outcome, faults, contradictions } = debriefSchema.parse(JSON.parse(readFileSync(json, 'utf8')));
    expect(outcome, stderr).not.toBe('left');
    expect(stdout).toMatch(/^ENGINE: .*\d/m);
    expect(stdout).toMatch(/^Debrief: (signed off|ended without sign-off) after/m);
    // At sixty times its pace a busy machine may be late for an answer, and stop for that: both are an end.
    // As a start ends without sign-off; 5 where something was missed, or answered against the gauges.
    const missed = faults.some(({ noticed }) => noticed === null) || contradictions.length > 0;
    expect(exitCode).toBe(missed ? 5 : outcome === 'signedOff' ? 0 : 3);
    expect(await verifyLog(log)).toMatchObject({ ok: true });
  });

  it('by keys takes what is typed, and is left at the end of the keys with a debrief', async () => {
    const log = join(scratchFolder(), 'r.jsonl');
    const rehearsal = startFirstFire(['rehearse', '--no-mic', '--silent', '--log', log], { keys: 'typed' });
    await rehearsal.tells('Say: "card is right"');
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
