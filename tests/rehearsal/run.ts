import { mkdtempSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { setImmediate } from 'node:timers/promises';
import { english } from '../../prompts/en/index.ts';
import { loadProfile } from '../../src/profile/load.ts';
import { openNewLog, readLog } from '../../src/record/index.ts';
import { answerByItself } from '../../src/rehearsal/by-itself.ts';
import { type Debrief, debrief } from '../../src/rehearsal/debrief.ts';
import { parseFault } from '../../src/rehearsal/faults.ts';
import { createRehearsal, type Rehearsal } from '../../src/rehearsal/rehearsal.ts';
import { headerData } from '../../src/session/header.ts';
import { Session } from '../../src/session/session.ts';
import { joinBus } from '../../src/session/vehicle/join-bus.ts';
import { VirtualClock } from '../../src/session/virtual-clock.ts';
import { SilentSink } from '../../src/voice/speakers/silent-sink.ts';
import { SpeechQueue } from '../../src/voice/speech-queue.ts';
import { job, speakingTime } from '../helpers/session-rig.ts';

/** Longer than any start takes, the cool-down included. */
const LONGEST_MS = 12 * 3600 * 1000;
/** A run in which nobody says anything any more is looked at for so long. */
const SILENCE_MS = 120_000;

export interface Run {
  readonly debrief: Debrief;
  readonly rehearsal: Rehearsal;
  readonly said: readonly string[];
}

/** A whole rehearsal without a human, through a real session, as fast as it can be worked out. */
export async function rehearseFast(
  faults: readonly string[] = [],
  { profileName = 'demo-six', seed = 1, ambientC = 5, withBus = true, silentFrom = 'never' } = {},
): Promise<Run> {
  const profile = await loadProfile(profileName);
  const clock = new VirtualClock(new Date('2026-01-02T03:04:05Z'));
  const path = join(mkdtempSync(join(tmpdir(), 'rehearsal-')), 'record.jsonl');
  const record = await openNewLog(path, headerData({ profile, job, language: 'en', units: 'metric' }), {
    wall: () => clock.wall(),
    monoMs: () => clock.nowMs(),
  });
  const speech = new SpeechQueue(speakingTime, new SilentSink((ms, signal) => clock.sleep(ms, signal)), () =>
    clock.nowMs(),
  );
  const session = new Session({ profile, job, language: english, units: 'metric', clock, record, speech });
  const said: string[] = [];
  session.watch(happening => {
    if (happening?.kind === 'said') said.push(happening.shown);
  });
  const options = { seed, ambientC, faults: faults.map(parseFault) };
  const rehearsal = createRehearsal(session, clock, options);
  const fallSilent = answerByItself(session, rehearsal, options);
  const leaving = new AbortController();
  await session.begin();
  const running = rehearsal.run(leaving.signal);
  const link = withBus && profile.bus ? joinBus(session, rehearsal.source, profile.bus) : undefined;
  let silentUntilMs = LONGEST_MS;
  while (session.moment.status === 'active' && clock.nowMs() < silentUntilMs) {
    if (silentUntilMs === LONGEST_MS && session.moment.context.step.startsWith(silentFrom)) {
      fallSilent();
      silentUntilMs = clock.nowMs() + SILENCE_MS;
    }
    clock.advance(Math.max(0, (clock.nextMs() ?? clock.nowMs() + 100) - clock.nowMs()));
    await session.settled();
    await setImmediate();
  }
  const outcome = session.moment.status === 'done' ? await session.outcome : 'left';
  link?.close();
  leaving.abort();
  await running;
  await speech.close();
  await record.close();
  return {
    debrief: debrief((await readLog(path)).entries, { ...rehearsal, planned: options.faults }, outcome),
    rehearsal,
    said,
  };
}
