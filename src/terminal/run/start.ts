import { languages } from '../../../prompts/index.ts';
import type { LanguageCode } from '../../../prompts/types.ts';
import { fitForFirstFire, loadProfile } from '../../profile/load.ts';
import type { Profile } from '../../profile/schema.ts';
import { type Clock, SystemClock } from '../../session/clock.ts';
import type { SessionHeader } from '../../session/header.ts';
import { beginRecord, continueRecord, recordName } from '../../session/record-keeping.ts';
import { VirtualClock } from '../../session/virtual-clock.ts';
import type { ChosenVoice } from '../../voice/speakers/choose-voice.ts';
import { openBus } from './bus.ts';
import { startCardOf } from './job.ts';
import { lookAtNamed } from './looked-at.ts';
import type { RunOptions } from './options.ts';
import type { RunParts, RunResult } from './run-parts.ts';
import { runSession } from './run-session.ts';

const busOf = async ({ bus }: RunOptions, profile: Profile, clock: Clock) =>
  bus === undefined ? undefined : openBus(bus, profile, clock);

/**
 * A new session, from job card to sign-off.
 * @throws ProfileError, JobCardError, OptionError, RecordError or VoiceError before it begins, each one sentence
 */
export async function startSession(options: RunOptions, voice: ChosenVoice): Promise<RunResult> {
  const profile = fitForFirstFire(await loadProfile(options.profile), options.profile);
  const job = await startCardOf(options, profile);
  const { language } = options;
  const units = options.units ?? languages[language].usualUnits;
  const header: SessionHeader = { profile, job, language, units };
  const clock = options.fast ? new VirtualClock(new Date()) : new SystemClock();
  const bus = await busOf(options, profile, clock);
  const named = await lookAtNamed(options, language);
  const path = options.log ?? `${recordName(new Date())}.jsonl`;
  const record = await beginRecord(path, header, clock);
  return runSession({ options, header, record, clock, voice, bus, ...named });
}

/**
 * A session that broke off goes on with its record.
 * @throws RecordError, ResumeError or OptionError when it cannot be gone on with, each one sentence
 */
export async function resumeSession(
  file: string,
  options: RunOptions,
  voiceFor: (language: LanguageCode) => ChosenVoice,
): Promise<RunResult> {
  const { record, clock, restored, setAside } = await continueRecord(file, beginMs =>
    options.fast ? new VirtualClock(new Date(), beginMs) : new SystemClock(beginMs),
  );
  const { header } = restored;
  let parts: RunParts;
  try {
    const bus = await busOf(options, header.profile, clock);
    const named = await lookAtNamed(options, header.language);
    const voice = voiceFor(header.language);
    parts = { options, header, record, clock, voice, bus, ...named, restored, setAside };
  } catch (error) {
    // On a full disk it cannot be closed: nothing was added to it yet that would be lost.
    await record.close().catch(() => {});
    throw error;
  }
  // From here on the record is closed by the run itself.
  return runSession(parts);
}
