import { describe, expect, it } from 'vitest';
import { readLog, verifyLog } from '../../../src/record/index.ts';
import { readRecorded } from '../../../src/record/vocabulary/index.ts';
import { replaySession } from '../../../src/report/replay.ts';
import { readHeader } from '../../../src/session/header.ts';
import { restore } from '../../../src/session/resume.ts';
import { goWithBus, wholeBusRig } from '../../helpers/bus-rig.ts';

describe('a whole start on demo-six with a bus', () => {
  it('is led to sign-off with the gauges read over the bus, and its record replays to the same end', async () => {
    const run = await wholeBusRig('noFuelCrank.restored.asking');
    await goWithBus(run);
    expect(run.key()).toBe('signedOff');
    await run.record.close();
    expect(await verifyLog(run.path)).toMatchObject({ ok: true });
    const { entries } = await readLog(run.path);

    const byBus = entries.filter(({ kind, data }) => kind === 'verdict' && data.via === 'bus');
    const steps = new Set(byBus.map(({ data }) => data.step));
    expect([...steps]).toEqual(
      expect.arrayContaining([
        'checks.idle',
        'checks.oilPressure',
        'checks.coolant',
        'checks.charging',
        'warmUp.watch',
        'sweeps.first',
        'sweeps.fifth',
        'shutdown.coolant',
      ]),
    );
    expect(byBus.every(({ data }) => data.met === true)).toBe(true);
    // No gate opens by the bus alone: its last word before each is somebody's.
    entries.forEach(({ kind, data }, index) => {
      if (kind !== 'passed' || data.gate === undefined) return;
      const event = entries.slice(0, index).findLast(entry => entry.kind === 'event');
      expect(event?.data.via).not.toBe('bus');
    });

    // Thinned: changes, and once a minute what stays, of ten messages a second.
    const facts = entries.filter(({ kind }) => kind === 'reading');
    expect(facts.length).toBeGreaterThan(20);
    expect(facts.length).toBeLessThan(600);
    expect(facts[0]?.data).toEqual({ quantity: expect.any(String), si: expect.any(Number), via: 'bus' });

    const header = entries[0] ? readHeader(entries[0].data) : null;
    if (!header) throw new Error('The record has no header.');
    const recorded = readRecorded(entries);
    expect(recorded.notUnderstood).toEqual([]);
    expect(replaySession(header, recorded.entries, entries)).toMatchObject({
      ok: true,
      replay: { last: { state: 'signedOff' } },
    });
  });

  it('that breaks off in the middle of a reading by the bus goes on exactly where it was', async () => {
    const run = await wholeBusRig('firstFire.lamps.item1');
    await goWithBus(run, 'checks.idle.sampling');
    await run.pass(2500);
    expect(run.session.moment.context.series.length).toBeGreaterThan(1);
    await run.session.settled();
    const { entries } = await readLog(run.path);
    const { moment } = restore(entries, 'the record');
    expect(moment.value).toEqual(run.session.moment.value);
    expect(moment.context).toEqual(run.session.moment.context);
  });
});
