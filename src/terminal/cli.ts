import { Command } from 'commander';
import { registerCalc } from './calc/register.ts';
import { registerReport } from './report-command.ts';
import { registerRun } from './run/commands.ts';
import { registerSigning } from './signing-commands.ts';
import { registerVerify } from './verify-command.ts';

/** Errors that are sentences for the user already; anything else is a fault of the program and shows its trace. */
const forUsers = [
  'JobCardError',
  'OptionError',
  'ProfileError',
  'RecordError',
  'ReportError',
  'ResumeError',
  'SigningError',
  'VoiceError',
];

const program = new Command('first-fire').description(
  'Leads a technician by voice through the first start of a new or rebuilt diesel engine.',
);
registerRun(program);
registerVerify(program);
registerReport(program);
registerSigning(program);
registerCalc(program);

try {
  await program.parseAsync();
} catch (error) {
  if (error instanceof Error && forUsers.includes(error.name)) console.error(error.message);
  else console.error(error);
  process.exitCode = 1;
}
