import type { Command } from 'commander';
import type { JobCard } from '../../../machines/context.ts';
import { loadProfile } from '../../profile/load.ts';
import { openNewLog, reopenLog } from '../../record/index.ts';
import { SystemClock } from '../../session/clock.ts';
import { headerData, type SessionHeader } from '../../session/header.ts';
import { loadJobCard } from '../../session/job-card.ts';
import { restore } from '../../session/resume.ts';
import { VirtualClock } from '../../session/virtual-clock.ts';
import { OptionError, type RunOptions, withRunOptions, withVoiceOptions } from './options.ts';
import { exitCodes, type RunResult, runSession } from './run-session.ts';

/** Invented people and vehicle, for practice and for a first look. */
const demoJob: JobCard = {
  vehicle: 'Invented truck seven',
  engine: 'Invented rebuilt diesel',
  technician: 'Ada Example',
  second: 'Ben Example',
  supervisor: 'Cleo Example',
};

const fileTime = (date: Date) => date.toISOString().slice(0, 19).replaceAll(':', '-');

function report({ end, closing }: RunResult): void {
  for (const line of closing) console.log(line);
  process.exitCode = exitCodes[end];
}

function checkFast({ fast, hear }: RunOptions): void {
  if (fast && hear === undefined)
    throw new OptionError('--fast needs --hear: a microphone has only its own pace.');
}

/** Adds the main job, and `resume` for one that broke off. */
export function registerRun(program: Command): void {
  withRunOptions(program).action(async (options: RunOptions) => {
    checkFast(options);
    const profile = await loadProfile(options.profile);
    const job = options.job === undefined ? demoJob : await loadJobCard(options.job);
    const header: SessionHeader = { profile, job, language: 'en', units: options.units };
    const clock = options.fast ? new VirtualClock(new Date()) : new SystemClock();
    const path = options.log ?? `first-fire-${fileTime(new Date())}.jsonl`;
    const record = await openNewLog(path, headerData(header), recordClock(clock));
    report(await runSession({ options, header, record, clock }));
  });

  withVoiceOptions(program.command('resume').description('go on with a session that broke off'))
    .argument('<file>', 'its record')
    .action(async (file: string, _own: unknown, command: Command) => {
      const options: RunOptions = command.optsWithGlobals();
      checkFast(options);
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
        report(await runSession({ options, header: restored.header, record: log, clock, restored }));
      } catch (error) {
        await log.close();
        throw error;
      }
    });
}

const recordClock = (clock: SystemClock | VirtualClock) => ({
  wall: () => clock.wall(),
  monoMs: () => clock.nowMs(),
});
