import { describe, expect, it } from 'vitest';
import { readLog } from '../../../src/record/index.ts';
import { type BusRig, busRig, dm1Frame } from '../../helpers/bus-rig.ts';

const differences = async (run: BusRig) =>
  (await readLog(run.path)).entries.filter(({ kind }) => kind === 'disagreement').map(({ data }) => data);

/** At the question for the air temperature, which demo-six wants spoken though the bus gives it. */
async function askedForAir(busC: number | 'error' | 'notAvailable'): Promise<BusRig> {
  const run = await busRig('job.ambient.asking');
  run.sends.set(171, busC);
  run.send();
  await run.pass(5000);
  expect(run.key()).toBe('job.ambient.asking');
  return run;
}

describe('a spoken reading', () => {
  it('within the tolerances of gauge and sensor is taken as ever', async () => {
    const run = await askedForAir(5);
    await run.type('50');
    expect(run.said.at(-1)).toBe('50 °F. Coldest night, °F?');
    expect(await differences(run)).toEqual([]);
  });

  it('that differs by more than both is questioned with both values, and is on the record', async () => {
    const run = await askedForAir(-20);
    await run.type('50');
    expect(run.key()).toBe('job.ambient.asking');
    expect(run.said.at(-1)).toBe(
      'Air temperature: you say 50 °F, the bus shows −4 °F. Look again, and say what you see.',
    );
    expect(await differences(run)).toMatchObject([
      { step: 'job.ambient', quantity: 'ambientTemperature', spoken: 10, bus: -20, unit: 'degC' },
    ]);
    await run.type('say again');
    expect(run.said.at(-1)).toMatch(/you say 50/);
  });

  it('that is corrected then goes on', async () => {
    const run = await askedForAir(-20);
    await run.type('50');
    await run.type('0');
    expect(run.said.at(-1)).toBe('0 °F. Coldest night, °F?');
  });

  it('that is said again just so is not overruled: it is read back with both values, and confirmed by a person', async () => {
    const run = await askedForAir(-20);
    await run.type('50');
    await run.type('50');
    expect(run.key()).toBe('job.ambient.readingBack');
    expect(run.said.at(-1)).toBe('Air temperature: you say 50 °F, the bus shows −4 °F. Is yours correct?');
    await run.type('correct');
    expect(run.key()).toBe('job.coldestNight.asking');
    const { entries } = await readLog(run.path);
    expect(entries.findLast(({ kind }) => kind === 'verdict')?.data).toMatchObject({ value: 10, bus: -20 });
  });

  it('that changes to another wrong one is questioned anew', async () => {
    const run = await askedForAir(-20);
    await run.type('50');
    await run.type('60');
    expect(run.key()).toBe('job.ambient.asking');
    expect(await differences(run)).toHaveLength(2);
  });

  it.each(['error', 'notAvailable'] as const)('is not held against a value that is %s', async content => {
    const run = await askedForAir(content);
    await run.type('50');
    expect(run.key()).toBe('job.coldestNight.asking');
  });

  it('is not held against a value that is stale', async () => {
    const run = await askedForAir(-20);
    run.sends.clear();
    await run.pass(4000);
    await run.type('50');
    expect(run.key()).toBe('job.coldestNight.asking');
  });
});

describe('a lamp', () => {
  it('lit on the bus and said to be dark is questioned, and counts when it is said again', async () => {
    const run = await busRig('firstFire.lamps.item2');
    run.dm1 = dm1Frame(null, { amberWarning: true });
    run.send();
    await run.type('dark');
    expect(run.key()).toBe('firstFire.lamps.item2');
    expect(run.said.at(-1)).toBe(
      'Amber warning lamp: you say dark, the bus shows it lit. Look again. Amber warning?',
    );
    expect(await differences(run)).toMatchObject([{ lamp: 'amberWarning', spoken: 'dark', bus: 'lit' }]);
    await run.type('dark');
    expect(run.key()).toBe('firstFire.lamps.item3');
  });

  it('lit in the lamp test is not questioned: the bus knows nothing of that test', async () => {
    const run = await busRig('keyOn.lamps.item2');
    run.dm1 = dm1Frame(null);
    run.send();
    await run.type('lit');
    expect(run.key()).toBe('keyOn.lamps.item3');
  });
});

describe('fault codes', () => {
  it('come from the bus, are confirmed by a person and judged like spoken ones', async () => {
    const run = await busRig('keyOn.faults.asking');
    run.dm1 = dm1Frame({ spn: 157, fmi: 18 }, { amberWarning: true });
    await run.pass(6000);
    expect(run.key()).toBe('keyOn.faults.busReadBack');
    expect(run.said.at(-1)).toBe('By the bus, codes: SPN 157 FMI 18. Correct?');
    await run.type('correct');
    expect(run.key()).toMatch(/^keyOn\.heaterHold/);
    expect(run.session.moment.context.faults).toMatchObject([{ spn: 157, fmi: 18 }]);
  });

  it('that block keep blocking', async () => {
    const run = await busRig('keyOn.faults.asking');
    run.dm1 = dm1Frame({ spn: 100, fmi: 1 });
    await run.pass(6000);
    await run.type('correct');
    expect(run.key()).toBe('keyOn.faults.blocked');
  });

  it('of which there are none still wait for somebody to say so', async () => {
    const run = await busRig('keyOn.faults.asking');
    run.dm1 = dm1Frame(null);
    await run.pass(6000);
    expect(run.said.at(-1)).toBe('By the bus, no codes. Correct?');
    await run.pass(60_000);
    expect(run.key()).toBe('keyOn.faults.busReadBack');
    // Somebody who sees it otherwise is asked again, and not by the bus.
    await run.type('wrong');
    await run.pass(6000);
    expect(run.key()).toBe('keyOn.faults.asking');
  });

  it('that the bus shows are not missing because nobody said them', async () => {
    const run = await busRig('keyOn.faults.asking');
    // While the question is being spoken the bus does not answer it yet.
    await run.type('say again');
    run.source.send(dm1Frame({ spn: 100, fmi: 1 }));
    await run.type('no codes');
    expect(run.key()).toBe('keyOn.faults.busReadBack');
    expect(await differences(run)).toMatchObject([{ spoken: 'noCodes', bus: [{ spn: 100, fmi: 1 }] }]);
  });
});

describe('an engine said to stand', () => {
  it('is not believed to while the bus shows that it turns', async () => {
    const run = await busRig('shutdown.keyOff.asking');
    run.sends.set(190, 700).set(100, 300);
    run.send();
    await run.type('engine is off');
    expect(run.key()).toBe('shutdown.keyOff.asking');
    expect(run.said.at(-1)).toMatch(/By the bus it turns at 700 rpm\. Key off, cut its fuel, now\./);
    run.sends.set(190, 0).set(100, 0);
    await run.pass(2000);
    await run.type('engine is off');
    expect(run.key()).not.toMatch(/^shutdown\.keyOff/);
  });

  it('is not believed to after a stop either', async () => {
    const run = await busRig('checks.leaks.item1');
    await run.type('stop');
    run.sends.set(190, 700);
    run.send();
    await run.type('all is off');
    expect(run.key()).toBe('stopped.makingSafe');
    run.sends.clear();
    await run.pass(3000);
    await run.type('all is off');
    expect(run.key()).toBe('stopped.askingCause');
  });
});
