import { spawn } from 'node:child_process';
import { fileURLToPath } from 'node:url';

export interface Ran {
  readonly exitCode: number | null;
  readonly stdout: string;
  readonly stderr: string;
}

const root = fileURLToPath(new URL('../..', import.meta.url));

/** Runs the command line as a user does, with nobody at the keys. */
export function firstFire(args: readonly string[], env: NodeJS.ProcessEnv = {}): Promise<Ran> {
  const child = spawn(process.execPath, ['--import', 'tsx', 'src/terminal/cli.ts', ...args], {
    cwd: root,
    env: { ...process.env, ...env },
    stdio: ['ignore', 'pipe', 'pipe'],
  });
  let stdout = '';
  let stderr = '';
  child.stdout.on('data', (data: Buffer) => {
    stdout += data.toString();
  });
  child.stderr.on('data', (data: Buffer) => {
    stderr += data.toString();
  });
  return new Promise((resolve, reject) => {
    child.on('error', reject);
    child.on('close', exitCode => resolve({ exitCode, stdout, stderr }));
  });
}
