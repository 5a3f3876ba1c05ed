import { initialTransition } from 'xstate';
import { buildFirstStart } from '../machines/first-start.ts';
import { loadProfile } from '../src/profile/load.ts';
import { handsOff } from '../src/rehearsal/model/controls.ts';
import { createEngine } from '../src/rehearsal/model/engine.ts';
import { createRehearsal } from '../src/rehearsal/rehearsal.ts';
import { PacedClock } from '../src/session/paced-clock.ts';
import { job } from '../tests/helpers/session-rig.ts';

const PACE = 60;
const HOUR_S = 3600;

/**
 * One hour of session time at x60, with the engine running and its bus on the air: how far session time, the
 * engine's own time and its frames are from what a minute of real time says. And how fast the model alone is.
 */
export async function benchRehearsal(): Promise<void> {
  const profile = await loadProfile('demo-six');
  const alone = createEngine(profile, { seed: 1, ambientC: 5 });
  alone.control({ ...handsOff, keyOn: true, oilFilled: true, coolantFilled: true });
  const beganMs = performance.now();
  alone.advanceTo(HOUR_S);
  console.log(`model alone: one hour in ${(performance.now() - beganMs).toFixed(0)} ms`);

  const moment = initialTransition(buildFirstStart(profile), { profile, job })[0];
  const context = { ...moment.context, step: 'checks.coolant' as const };
  const running = Object.assign(Object.create(Object.getPrototypeOf(moment)), moment, { context });
  const clock = new PacedClock(new Date(), PACE);
  const rehearsal = createRehearsal({ moment: running, parts: { profile } }, clock, {
    seed: 1,
    ambientC: 5,
    faults: [],
  });
  let frames = 0;
  let latestLagS = 0;
  void rehearsal.source.run(
    frame => {
      frames += 1;
      latestLagS = Math.max(latestLagS, clock.nowMs() / 1000 - frame.timeS);
    },
    () => {},
  );
  const leaving = new AbortController();
  const cpu = process.cpuUsage();
  const realMs = performance.now();
  const begunMs = clock.nowMs();
  const run = rehearsal.run(leaving.signal);
  await clock.sleep(HOUR_S * 1000 - begunMs);
  const realS = (performance.now() - realMs) / 1000;
  const sessionS = (clock.nowMs() - begunMs) / 1000;
  const engineS = rehearsal.engine.state.timeS;
  leaving.abort();
  await run;
  const used = process.cpuUsage(cpu);
  console.log(
    [
      `x${PACE}: ${sessionS.toFixed(1)} s of session in ${realS.toFixed(2)} s, drift ${((sessionS / PACE - realS) * 1000).toFixed(1)} ms real`,
      `engine behind the clock at the end ${(sessionS - engineS).toFixed(2)} s of session`,
      `${frames} frames, the latest ${latestLagS.toFixed(2)} s of session after its time`,
      `${(((used.user + used.system) / 1e6 / realS) * 100).toFixed(0)} % of a core`,
    ].join('\n'),
  );
}
