import { describe, expect, it } from 'vitest';
import { readLog } from '../../../src/record/index.ts';
import { busRig, dm1Frame, goodEngine, parameterFrame } from '../../helpers/bus-rig.ts';

const problems = (run: Awaited<ReturnType<typeof busRig>>) =>
  run.happenings.flatMap(happening => (happening.kind === 'problem' ? [happening.sentence] : []));

describe('a bus that is joined to a session', () => {
  it('says that it is over, where it ends by itself, and no more when it is closed', async () => {
    const run = await busRig('job.card.asking');
    expect(run.link.state()).toBe('notHeard');
    run.source.end({ kind: 'finished' });
    await run.link.done;
    expect(problems(run)).toEqual(['a bus by hand is over; go on by voice and keys.']);
    expect(run.link.state()).toBe('gone');

    const closed = await busRig('job.card.asking');
    closed.link.close();
    await closed.link.done;
    expect(problems(closed)).toEqual([]);
    expect(closed.link.state()).toBe('notHeard');
  });

  it('says why it was lost, once', async () => {
    const run = await busRig('job.card.asking');
    run.source.end({ kind: 'lost', reason: 'The cable is off.' });
    await run.link.done;
    expect(problems(run)).toEqual(['The cable is off.']);
  });

  it('passes on what its source notices, and is gone where that says so', async () => {
    const run = await busRig('job.card.asking');
    run.source.notice({ kind: 'rubbish', count: 3, sentence: 'Three lines could not be read.' });
    expect(run.link.state()).toBe('notHeard');
    run.source.notice({ kind: 'lost', sentence: 'The cable is off; it is tried again.' });
    expect(run.link.state()).toBe('gone');
    run.source.send(dm1Frame(null));
    expect(run.link.state()).toBe('alive');
    expect(problems(run)).toEqual([
      'Three lines could not be read.',
      'The cable is off; it is tried again.',
      'The vehicle bus is heard again.',
    ]);
  });

  it('is silent about its silence until the key is on', async () => {
    const run = await busRig('job.card.asking');
    await run.pass(60_000);
    expect(problems(run)).toEqual([]);
    const on = await busRig('keyOn.faults.asking');
    await on.pass(60_000);
    expect(problems(on)).toHaveLength(1);
    expect(on.link.state()).toBe('silent');
    goodEngine(on);
    await on.pass(2000);
    expect(problems(on)).toContain('The vehicle bus is heard again.');
    expect(on.link.state()).toBe('alive');
  });
});

describe('what a bus does to a session', () => {
  const kept = async (run: Awaited<ReturnType<typeof busRig>>, kind: string) => {
    await run.session.settled();
    return (await readLog(run.path)).entries.filter(entry => entry.kind === kind).map(({ data }) => data);
  };
  const silent = (run: Awaited<ReturnType<typeof busRig>>) =>
    run.said.filter(text => text.startsWith('The bus is silent')).length;

  it('stands on the record as its own, put down to the technician', async () => {
    const run = await busRig('checks.leaks.item1');
    run.source.send(parameterFrame(190, 3500));
    expect((await kept(run, 'event')).at(-1)).toMatchObject({
      type: 'stop',
      cause: 'overspeed',
      by: 'technician',
      via: 'bus',
      state: 'stopped.makingSafe',
    });
  });

  it('is on the record once a minute where it stays the same, while the engine runs and at no other time', async () => {
    for (const [key, times] of [
      ['checks.leaks.item1', 3],
      ['job.card.asking', 1],
    ] as const) {
      const run = await busRig(key);
      run.sends.set(190, 850).set(100, 300);
      await run.pass(125_000);
      const speeds = (await kept(run, 'reading')).filter(({ quantity }) => quantity === 'engineSpeed');
      expect(speeds, key).toHaveLength(times);
    }
  });

  it('ends where it is closed: no frame is acted on by time any more, and its end is told to nobody', async () => {
    const run = await busRig('checks.leaks.item1');
    goodEngine(run);
    await run.pass(2000);
    run.link.close();
    await run.link.done;
    const before = run.happenings.length;
    run.sends.clear();
    run.dm1 = null;
    await run.pass(60_000);
    expect(run.happenings.length).toBe(before);
    expect(run.link.state()).toBe('alive');
  });

  it('is missed aloud only where it had been heard', async () => {
    const never = await busRig('checks.leaks.item1');
    never.source.notice({ kind: 'lost', sentence: 'The cable is off; it is tried again.' });
    await never.pass(1000);
    expect(silent(never)).toBe(0);
    const heard = await busRig('checks.leaks.item1');
    goodEngine(heard);
    await heard.pass(2000);
    heard.source.end({ kind: 'lost', reason: 'The cable is off.' });
    await heard.pass(2000);
    expect(silent(heard)).toBe(1);
    expect(heard.link.state()).toBe('gone');
  });

  it('is nothing once the session is over', async () => {
    const run = await busRig('job.card.asking');
    for (const said of ['stop', 'all is off', 'another cause', 'end the session', 'correct'])
      await run.type(said);
    expect(run.key()).toBe('ended');
    run.source.send(parameterFrame(190, 3500));
    await run.pass(30_000);
    expect(run.key()).toBe('ended');
    expect(await kept(run, 'reading')).toEqual([]);
    expect(problems(run)).toEqual([]);
  });
});
