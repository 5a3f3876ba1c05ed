/** The calc command on its own, for tests that need a whole process. */
import { Command, CommanderError } from 'commander';
import { registerCalc } from '../../src/terminal/calc/register.ts';

const program = new Command('first-fire').exitOverride();
registerCalc(program);
try {
  await program.parseAsync();
} catch (error) {
  if (!(error instanceof CommanderError)) throw error;
  process.exitCode = error.exitCode === 0 ? 0 : 2;
}
