import { describe, expect, it } from 'vitest';
import { busRig, dm1Frame, goodEngine } from '../../helpers/bus-rig.ts';

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
