/** The command line with nothing but `verify` on it. */
import { Command } from 'commander';
import { registerVerify } from '../../../src/terminal/verify-command.ts';

const program = new Command();
registerVerify(program);
await program.parseAsync();
