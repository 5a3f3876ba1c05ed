import type { Command } from 'commander';
import { usualLanguage } from '../../../prompts/index.ts';
import { OptionError, type RunOptions, withRunOptions, withVoiceOptions } from './options.ts';
import type { RunEnd, RunResult } from './run-parts.ts';
import { voiceFor } from './warm-voice.ts';

/** How a run of the program ends, as its exit code. */
const exitCodes: Record<RunEnd, number> = { signedOff: 0, ended: 3, left: 4 };

function report({ end, closing }: RunResult): void {
  for (const line of closing) console.log(line);
  process.exitCode = exitCodes[end];
}

function checkFast({ fast, hear }: RunOptions): void {
  if (fast && hear === undefined)
    throw new OptionError('--fast needs --hear: a microphone has only its own pace.');
}

/** Adds the main job, and `resume` for one that broke off. The voice warms up while the rest is loaded. */
export function registerRun(program: Command): void {
  withRunOptions(program).action(async (options: RunOptions) => {
    checkFast(options);
    const voice = voiceFor(options, options.language);
    const { startSession } = await import('./start.ts');
    report(await startSession(options, voice));
  });

  withVoiceOptions(program.command('resume').description('go on with a session that broke off'))
    .argument('<file>', 'its record')
    .action(async (file: string, _own: unknown, command: Command) => {
      const options: RunOptions = command.optsWithGlobals();
      checkFast(options);
      // Only the record knows its language; the usual one is made ready meanwhile.
      const usual = voiceFor(options, usualLanguage);
      const { resumeSession } = await import('./start.ts');
      report(
        await resumeSession(file, options, language =>
          language === usualLanguage ? usual : voiceFor(options, language),
        ),
      );
    });
}
