import { loadProfile } from '../../profile/load.ts';
import { SystemClock } from '../../session/clock.ts';
import { demoJob } from '../../session/demo-job.ts';
import type { SessionHeader } from '../../session/header.ts';
import { loadJobCard } from '../../session/job-card.ts';
import { beginRecord, continueRecord, recordName } from '../../session/record-keeping.ts';
import { VirtualClock } from '../../session/virtual-clock.ts';
import type { Synthesizer } from '../../voice/ports.ts';
import type { RunOptions } from './options.ts';
import { type RunResult, runSession } from './run-session.ts';

/**
 * A new session, from job card to sign-off.
 * @throws ProfileError, JobCardError, RecordError or VoiceError before it begins, each one sentence
 */
export async function startSession(options: RunOptions, voice: Synthesizer): Promise<RunResult> {
  const profile = await loadProfile(options.profile);
  const job = options.job === undefined ? demoJob : await loadJobCard(options.job);
  const header: SessionHeader = { profile, job, language: 'en', units: options.units };
  const clock = options.fast ? new VirtualClock(new Date()) : new SystemClock();
  const path = options.log ?? `${recordName(new Date())}.jsonl`;
  const record = await beginRecord(path, header, clock);
  return runSession({ options, header, record, clock, voice });
}

/**
 * A session that broke off goes on with its record.
 * @throws RecordError or ResumeError when the record cannot be gone on with, each one sentence
 */
export async function resumeSession(
  file: string,
  options: RunOptions,
  voice: Synthesizer,
): Promise<RunResult> {
  const { record, clock, restored } = await continueRecord(file, beginMs =>
    options.fast ? new VirtualClock(new Date(), beginMs) : new SystemClock(beginMs),
  );
  return runSession({ options, header: restored.header, record, clock, voice, restored });
}
