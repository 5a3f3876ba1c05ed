import { initialTransition, transition } from 'xstate';
import type { SessionEvent } from '../machines/events.ts';
import { buildFirstStart } from '../machines/first-start.ts';
import { isOver, type Moment } from '../machines/moment.ts';
import { nextAlarmMs } from '../machines/timing.ts';
import { loadProfile } from '../src/profile/load.ts';
import { goodBody } from '../tests/machines/helpers/good.ts';

const job = { vehicle: 'V', engine: 'E', technician: 'T', second: 'S', supervisor: 'U' };
const PAUSE_MS = 1000;

/** Times building the statechart, and whole all-good starts; prints milliseconds and transitions a second. */
export async function benchMachine(starts = 20): Promise<void> {
  for (const name of ['demo-six', 'demo-four']) {
    const profile = await loadProfile(name);
    const begun = performance.now();
    const machine = buildFirstStart(profile);
    const builtMs = performance.now() - begun;

    const run = (): number => {
      let [moment] = initialTransition(machine, { profile, job });
      let nowMs = 0;
      let transitions = 0;
      for (; !isOver(moment); transitions += 1) {
        const event = nextEvent(moment, nowMs);
        nowMs = event.atMs;
        [moment] = transition(machine, moment, event);
      }
      return transitions;
    };
    run();
    const start = performance.now();
    let transitions = 0;
    for (let turn = 0; turn < starts; turn += 1) transitions += run();
    const seconds = (performance.now() - start) / 1000;
    console.log(
      `${name.padEnd(10)} built in ${builtMs.toFixed(0)} ms; ${transitions / starts} transitions a start, ${(transitions / seconds).toFixed(0)} a second`,
    );
  }
}

function nextEvent(moment: Moment, nowMs: number): SessionEvent {
  const stamp = { by: 'technician', via: 'keys' } as const;
  const body = goodBody(moment);
  if (body) return { ...body, ...stamp, atMs: nowMs + PAUSE_MS };
  return { type: 'clock', ...stamp, atMs: Math.max(nowMs, nextAlarmMs(moment.context) ?? nowMs) };
}
