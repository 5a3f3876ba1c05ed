import { readFile } from 'node:fs/promises';
import { text } from 'node:stream/consumers';
import { systemCause } from '../../files/cause.ts';
import { UsageError } from './usage-error.ts';

/** How a calculation meets the outside: handed in, so that it can be run inside another program. */
export interface CalcIo {
  readonly print: (text: string) => void;
  readonly complain: (text: string) => void;
  readonly setExitCode: (code: number) => void;
  readonly readFile: (path: string) => Promise<string>;
  readonly readStandardInput: () => Promise<string>;
}

export const processIo: CalcIo = {
  print: line => process.stdout.write(`${line}\n`),
  complain: line => process.stderr.write(`${line}\n`),
  setExitCode: code => {
    process.exitCode = code;
  },
  readFile: async path => {
    try {
      return await readFile(path, 'utf8');
    } catch (error) {
      throw new UsageError(
        `The file ${path} cannot be read: ${systemCause(error)}; check its name, or give - for standard input.`,
      );
    }
  },
  readStandardInput: () => text(process.stdin),
};
