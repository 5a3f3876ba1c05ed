import type { JobCard } from '../../../machines/context.ts';
import { loadProfile } from '../../profile/load.ts';
import type { Profile } from '../../profile/schema.ts';
import { openNewLog, reopenLog } from '../../record/index.ts';
import { type Clock, SystemClock } from '../../session/clock.ts';
import { headerData, type SessionHeader } from '../../session/header.ts';
import { loadJobCard } from '../../session/job-card-file.ts';
import { restore } from '../../session/resume.ts';
import { VirtualClock } from '../../session/virtual-clock.ts';
import type { Synthesizer } from '../../voice/ports.ts';
import { openBus } from './bus.ts';
import type { RunOptions } from './options.ts';
import { type RunResult, runSession } from './run-session.ts';

/** Invented people and vehicle, for practice and for a first look. */
const demoJob: JobCard = {
  vehicle: 'Invented truck seven',
  engine: 'Invented rebuilt diesel',
  technician: 'Ada Example',
  second: 'Ben Example',
  supervisor: 'Cleo Example',
};

const fileTime = (date: Date) => date.toISOString().slice(0, 19).replaceAll(':', '-');

const busOf = async ({ bus }: RunOptions, profile: Profile, clock: Clock) =>
  bus === undefined ? undefined : openBus(bus, profile, clock);

/**
 * A new session, from job card to sign-off.
 * @throws ProfileError, JobCardError, OptionError, RecordError or VoiceError before it begins, each one sentence
 */
export async function startSession(options: RunOptions, voice: Synthesizer): Promise<RunResult> {
  const profile = await loadProfile(options.profile);
  const job = options.job === undefined ? demoJob : await loadJobCard(options.job);
  const header: SessionHeader = { profile, job, language: 'en', units: options.units };
  const clock = options.fast ? new VirtualClock(new Date()) : new SystemClock();
  const bus = await busOf(options, profile, clock);
  const path = options.log ?? `first-fire-${fileTime(new Date())}.jsonl`;
  const record = await openNewLog(path, headerData(header), {
    wall: () => clock.wall(),
    monoMs: () => clock.nowMs(),
  });
  return runSession({ options, header, record, clock, voice, bus });
}

/**
 * A session that broke off goes on with its record.
 * @throws RecordError, ResumeError or OptionError when it cannot be gone on with, each one sentence
 */
export async function resumeSession(
  file: string,
  options: RunOptions,
  voice: Synthesizer,
): Promise<RunResult> {
  const started = performance.now();
  let beginMs = 0;
  const { log, entries } = await reopenLog(file, {
    wall: () => new Date(),
    monoMs: () => beginMs + performance.now() - started,
  });
  try {
    const restored = restore(entries, file);
    beginMs = restored.lastMs;
    const clock = options.fast
      ? new VirtualClock(new Date(), restored.lastMs)
      : new SystemClock(restored.lastMs);
    const { header } = restored;
    const bus = await busOf(options, header.profile, clock);
    return await runSession({ options, header, record: log, clock, voice, bus, restored });
  } catch (error) {
    await log.close();
    throw error;
  }
}
