import { describe, expect, it } from 'vitest';
import { type BusRig, busRig, goodEngine, parameterFrame } from '../../helpers/bus-rig.ts';

const problems = (run: BusRig) =>
  run.happenings.flatMap(each => (each.kind === 'problem' ? [each.sentence] : []));
const times = (texts: readonly string[], pattern: RegExp) => texts.filter(text => pattern.test(text)).length;

/** A running engine, at a reading that the bus is about to give. */
async function running(): Promise<BusRig> {
  const run = await busRig('checks.leaks.item1');
  goodEngine(run);
  run.send();
  await run.pass(3000);
  expect(run.link.state()).toBe('alive');
  return run;
}

describe('a bus that is lost', () => {
  it('by silence is told once, and the session goes on by keys', async () => {
    const run = await running();
    run.sends.clear();
    run.dm1 = null;
    await run.pass(30_000);
    expect(run.link.state()).toBe('silent');
    expect(times(problems(run), /Nothing was heard on the vehicle bus/)).toBe(1);
    expect(times(run.said, /The bus is silent/)).toBe(1);
    await run.type('good here');
    expect(run.key()).toBe('checks.leaks.item2');
    goodEngine(run);
    await run.pass(1000);
    expect(run.link.state()).toBe('alive');
    expect(times(problems(run), /heard again/)).toBe(1);
  });

  it('by being unplugged is told once, and comes back', async () => {
    const run = await running();
    run.sends.clear();
    run.dm1 = null;
    run.source.notice({
      kind: 'lost',
      sentence: 'The bus adapter at X is gone; plug it in again. Trying again.',
    });
    await run.pass(20_000);
    expect(run.link.state()).toBe('gone');
    expect(times(run.said, /The bus is silent/)).toBe(1);
    expect(times(problems(run), /is gone/)).toBe(1);
    expect(run.key()).toBe('checks.leaks.item1');
    goodEngine(run);
    await run.pass(1000);
    expect(run.link.state()).toBe('alive');
  });

  it('for good says why, and the session goes on', async () => {
    const run = await running();
    run.source.end({ kind: 'lost', reason: 'candump on can0 gives no more; check the adapter.' });
    await run.pass(1000);
    await run.link.done;
    expect(run.link.state()).toBe('gone');
    expect(times(problems(run), /candump on can0 gives no more/)).toBe(1);
    await run.type('good here');
    expect(run.key()).toBe('checks.leaks.item2');
  });

  it('or off after too many errors is told in the words of its adapter', async () => {
    const run = await running();
    run.source.notice({ kind: 'condition', condition: 'busOff', sentence: 'The adapter went off the bus.' });
    await run.pass(500);
    expect(problems(run)).toContain('The adapter went off the bus.');
  });

  it('has not been missed before the key is on', async () => {
    const run = await busRig('walkRound.tools.asking');
    await run.pass(10_000);
    expect(run.link.state()).toBe('notHeard');
    expect(problems(run)).toEqual([]);
  });

  it('is missed once the key is on', async () => {
    const run = await busRig('keyOn.faults.asking');
    await run.pass(10_000);
    expect(times(problems(run), /check that the key is on/)).toBe(1);
  });
});

describe('a sensor', () => {
  it.each(['notAvailable', 'error', 'silent'] as const)(
    'that the running engine is guarded by and that becomes %s is told once',
    async content => {
      const run = await running();
      if (content === 'silent') run.sends.delete(100);
      else run.sends.set(100, content);
      await run.pass(10_000);
      expect(times(run.said, /The bus gives no oil pressure any more\. Read the gauge\./)).toBe(1);
      expect(run.key()).toBe('checks.leaks.item1');
    },
  );

  it('that vanishes in the middle of a series leaves the series to people', async () => {
    const run = await busRig('firstRun.oilPressure.asking');
    await run.type('pressure good');
    run.sends.set(190, 850).set(100, 280);
    await run.pass(8000);
    expect(run.key()).toBe('checks.idle.sampling');
    run.sends.set(190, 'error');
    await run.pass(15_000);
    expect(run.key()).toBe('checks.idle.item1');
    expect(run.session.moment.context.series).toEqual([]);
    await run.type('850');
    expect(run.key()).toBe('checks.idle.item2');
  });

  it('with a value that no engine can have answers nothing', async () => {
    const run = await busRig('checks.coolant.asking');
    run.sends.set(190, 850).set(100, 280).set(110, 200);
    await run.pass(10_000);
    expect(run.key()).toBe('checks.coolant.asking');
  });
});

it('rubbish, remote requests and frames of other kinds change nothing', async () => {
  const run = await running();
  const before = run.session.moment;
  const frame = parameterFrame(100, 0);
  run.sends.clear();
  run.dm1 = null;
  run.source.send(
    { ...frame, extended: false },
    { ...frame, remote: true },
    { ...frame, data: new Uint8Array(0) },
    { ...frame, data: frame.data.slice(0, 3) },
    { ...frame, id: 0x1fffffff },
    { ...frame, timeS: Number.NaN, data: new Uint8Array(8).fill(0xff) },
  );
  run.source.notice({ kind: 'rubbish', count: 1, sentence: 'A line from the bus could not be read.' });
  await run.session.settled();
  expect(run.session.moment).toBe(before);
});
