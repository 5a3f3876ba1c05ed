import { accessSync, constants, statSync } from 'node:fs';
import { delimiter, join } from 'node:path';

/** The outside world a program is looked for and started in. */
export interface Surroundings {
  readonly platform: NodeJS.Platform;
  readonly env: NodeJS.ProcessEnv;
}

export const thisComputer: Surroundings = { platform: process.platform, env: process.env };

/** Whether a program can be started by its name: looks along the path, starts nothing. */
export function isInstalled(program: string, { platform, env }: Surroundings = thisComputer): boolean {
  const folders = (env.PATH ?? env.Path ?? '').split(delimiter).filter(folder => folder !== '');
  const names = platform === 'win32' ? [`${program}.exe`, `${program}.cmd`] : [program];
  return folders.some(folder => names.some(name => isExecutable(join(folder, name))));
}

function isExecutable(path: string): boolean {
  try {
    accessSync(path, constants.X_OK);
    return statSync(path).isFile();
  } catch {
    return false;
  }
}
