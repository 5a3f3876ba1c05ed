import { expect, it, vi } from 'vitest';
import { goUntil, rig } from '../helpers/session-rig.ts';

/** A machine that slept and has just woken: its clock knows, and has not rung yet for what was due meanwhile. */
async function asleepAt(key: string, profile: 'demo-six' | 'demo-four' = 'demo-six') {
  const run = await rig(profile);
  await run.session.begin();
  await goUntil(run, key);
  const nowMs = run.clock.nowMs.bind(run.clock);
  let sleptMs = 0;
  vi.spyOn(run.clock, 'nowMs').mockImplementation(() => nowMs() + sleptMs);
  return {
    run,
    sleep: (s: number) => {
      sleptMs = s * 1000;
    },
  };
}

it('nobody is clear any more who was clear before the machine slept', async () => {
  const { run, sleep } = await asleepAt('firstFire.crank.ready');
  sleep(run.session.parts.profile.walkRound.clearValidS);
  await run.type('ready');
  expect(run.key()).toBe('firstFire.crank.askingClear');
});

it('an oil pressure that is told when the machine wakes comes too late', async () => {
  const { run, sleep } = await asleepAt('firstFire.oilPressure.asking');
  sleep(600);
  await run.type('pressure good');
  expect(run.key()).toMatch(/^stopped\./);
  expect(run.session.moment.context.stop).toMatchObject({ cause: 'noOilPressure' });
});
