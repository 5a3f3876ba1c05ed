import { describe, expect, it } from 'vitest';
import type { CanFrame } from '../../../src/bus/frame.ts';
import { type BusRig, busRig, dm1Frame, goodEngine, parameterFrame } from '../../helpers/bus-rig.ts';

const WITHIN_MS = 200;

/** Running and in good order, well after first fire. */
async function running(key = 'checks.leaks.item1'): Promise<BusRig> {
  const run = await busRig(key);
  goodEngine(run);
  run.send();
  await run.pass(10_000);
  expect(run.key()).toBe(key);
  return run;
}

/** What one frame does, and how long after it the call-out comes by the clock of the session. */
async function callOutAfter(run: BusRig, ...frames: readonly CanFrame[]) {
  const sentMs = run.clock.nowMs();
  run.source.send(...frames);
  await run.pass(WITHIN_MS);
  const callOut = run.happenings.find(each => each.kind === 'said' && each.hazard && each.atMs >= sentMs);
  if (callOut?.kind !== 'said') return null;
  return { text: callOut.shown, afterMs: callOut.atMs - sentMs };
}

const dangers = [
  ['a red-stop lamp', [dm1Frame(null, { redStop: true })], 'faultCode', /^Stop: fault code! Key off/],
  [
    'oil pressure under its floor',
    [parameterFrame(100, 60)],
    'noOilPressure',
    /^Stop: no oil pressure! Key off/,
  ],
  ['no oil pressure at all', [parameterFrame(100, 0)], 'noOilPressure', /^Stop: no oil pressure/],
  ['overspeed', [parameterFrame(190, 3100)], 'overspeed', /^Stop: overspeed! Key off/],
] as const;

describe('a running engine', () => {
  it.each(dangers)(
    'with %s is stopped by the session itself within 200 ms of the frame',
    async (_, frames, cause, says) => {
      const run = await running();
      const callOut = await callOutAfter(run, ...frames);
      expect(callOut?.text).toMatch(says);
      expect(callOut?.afterMs).toBeLessThanOrEqual(WITHIN_MS);
      expect(run.key()).toBe('stopped.makingSafe');
      expect(run.session.moment.context.stop).toMatchObject({ cause, step: 'checks.leaks' });
      // The frames go on, the call-out does not.
      const said = run.said.length;
      run.sends.clear();
      for (let times = 0; times < 5; times += 1) {
        run.source.send(...frames);
        await run.pass(300);
      }
      expect(run.said.slice(said).filter(text => text.startsWith('Stop'))).toEqual([]);
    },
  );

  it('on hold is stopped as well', async () => {
    const run = await running();
    await run.type('hold');
    expect(run.key()).toBe('held');
    expect(await callOutAfter(run, parameterFrame(190, 3100))).not.toBeNull();
    expect(run.key()).toBe('stopped.makingSafe');
  });

  it.each([
    ['not available', parameterFrame(100, 'notAvailable')],
    ['an error', parameterFrame(100, 'error')],
    ['of another controller', parameterFrame(100, 0, 33)],
  ])('is not stopped for an oil pressure that is %s', async (_, frame) => {
    const run = await running();
    expect(await callOutAfter(run, frame)).toBeNull();
    expect(run.key()).toBe('checks.leaks.item1');
  });

  it('is not stopped for the red-stop lamp of another controller, nor for one that is not available', async () => {
    const run = await running();
    expect(await callOutAfter(run, dm1Frame(null, { redStop: true }, 11), dm1Frame(null))).toBeNull();
    expect(run.key()).toBe('checks.leaks.item1');
  });

  it('that overspeeds after it was stopped for something else is called out once more', async () => {
    const run = await running();
    expect(await callOutAfter(run, parameterFrame(100, 0))).not.toBeNull();
    await run.pass(3000);
    expect(await callOutAfter(run, parameterFrame(190, 3500))).not.toBeNull();
  });
});

describe('after first fire', () => {
  it('the oil pressure has its seconds, and not one frame more', async () => {
    const run = await busRig('firstFire.oilPressure.asking');
    const { firstFireWithinS } = run.session.parts.profile.oilPressure;
    run.sends.set(190, 800).set(100, 0);
    run.send();
    await run.pass(firstFireWithinS * 1000 - 700);
    expect(run.key()).toBe('firstFire.oilPressure.asking');
    await run.pass(700 + WITHIN_MS);
    expect(run.key()).toBe('stopped.makingSafe');
    expect(run.session.moment.context.stop?.cause).toBe('noOilPressure');
  });

  it('an engine that its own speed shows running is watched though nobody has said so yet', async () => {
    const run = await busRig('firstFire.crank.cranking');
    run.sends.set(190, 800).set(100, 0);
    run.send();
    await run.pass(9000);
    expect(run.key()).toBe('stopped.makingSafe');
  });
});

describe('an engine that runs where it is cranked once more', () => {
  it('is stopped by its oil pressure after its seconds, whatever is asked', async () => {
    const run = await busRig('firstFire.crank.askingClear');
    run.sends.set(190, 800).set(100, 0);
    run.send();
    await run.pass(9000);
    expect(run.session.moment.context.stop?.cause).toBe('noOilPressure');
  });

  it('is off after ten seconds in which nobody says that it runs', async () => {
    const run = await busRig('firstFire.crank.askingClear');
    run.sends.set(190, 800).set(100, 300);
    run.send();
    await run.pass(9000);
    expect(run.key()).toBe('firstFire.crank.askingClear');
    await run.pass(2000);
    expect(run.key()).toBe('stopped.makingSafe');
    expect(run.session.moment.context.stop).toMatchObject({ cause: 'other', found: null });
  });

  it('without fuel is off at once', async () => {
    const run = await busRig('noFuelCrank.untilPressure.askingClear');
    run.sends.set(190, 800).set(100, 300);
    run.send();
    await run.pass(WITHIN_MS);
    expect(run.session.moment.context.stop?.cause).toBe('firedUnfuelled');
  });
});

describe('an engine that stands', () => {
  it('is not stopped for a red-stop lamp in the lamp test, nor for having no oil pressure', async () => {
    const run = await busRig('keyOn.lamps.item1');
    run.sends.set(190, 0).set(100, 0);
    run.dm1 = dm1Frame(null, { redStop: true });
    await run.pass(15_000);
    expect(run.key()).toBe('keyOn.lamps.item1');
  });

  it('is not cranked with a red-stop lamp lit after the lamp test', async () => {
    const run = await busRig('firstFire.crank.ready');
    expect(await callOutAfter(run, dm1Frame({ spn: 100, fmi: 1 }, { redStop: true }))).not.toBeNull();
    expect(run.key()).toBe('stopped.makingSafe');
  });

  it('being turned off takes pressure, speed and controller with it, and nothing is called out', async () => {
    const run = await running('shutdown.keyOff.asking');
    const spoken = run.said.length;
    run.sends.set(190, 300).set(100, 40);
    await run.pass(1000);
    run.sends.set(190, 0).set(100, 0);
    await run.pass(1000);
    run.sends.clear();
    await run.pass(5000);
    expect(run.key()).toBe('shutdown.keyOff.asking');
    expect(run.said.slice(spoken).filter(text => /^Stop|oil pressure/.test(text))).toEqual([]);
  });
});
