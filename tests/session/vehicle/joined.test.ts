import { describe, expect, it } from 'vitest';
import { busRig, goodEngine } from '../../helpers/bus-rig.ts';

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
    run.source.notice({ kind: 'problem', sentence: 'A frame was broken.' } as never);
    expect(problems(run)).toEqual(['A frame was broken.']);
    expect(run.link.state()).toBe('notHeard');
  });

  it('acts no more once it is closed', async () => {
    const run = await busRig('keyOn.battery.asking');
    run.link.close();
    await run.link.done;
    goodEngine(run);
    await run.pass(5000);
    expect(run.key()).toBe('keyOn.battery.asking');
  });

  it('is silent about its silence until the key is on', async () => {
    const run = await busRig('job.card.asking');
    await run.pass(60_000);
    expect(problems(run)).toEqual([]);
    const on = await busRig('keyOn.battery.asking');
    await on.pass(60_000);
    expect(problems(on)).toHaveLength(1);
    expect(on.link.state()).toBe('silent');
    goodEngine(on);
    await on.pass(2000);
    expect(problems(on)).toContain('The vehicle bus is heard again.');
    expect(on.link.state()).toBe('alive');
  });
});
