import { execFileSync } from 'node:child_process';
import { mkdir, mkdtemp, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { type Browser, chromium } from 'playwright-core';

/** Without these Chromium talks to its maker's hosts at every start. */
const quiet = [
  '--no-sandbox',
  '--disable-gpu',
  '--disable-quic',
  '--no-first-run',
  '--disable-background-networking',
  '--disable-component-update',
  '--disable-sync',
];

const fakeMicrophone = (wav: string | null) => [
  '--use-fake-device-for-media-stream',
  ...(wav === null ? [] : [`--use-file-for-fake-audio-capture=${wav}%noloop`]),
];

/** Lets pages sound that nobody has touched, which a browser as people have it does not. */
const soundsUntouched = '--autoplay-policy=no-user-gesture-required';

const launchAsItIs = (args: readonly string[], env = process.env): Promise<Browser> =>
  chromium.launch({
    executablePath: '/usr/bin/chromium',
    headless: true,
    args: [...quiet, '--use-fake-ui-for-media-stream', ...args],
    env,
  });

const launch = (args: readonly string[], env = process.env): Promise<Browser> =>
  launchAsItIs([soundsUntouched, ...args], env);

/** Debian's Chromium, with a microphone that hears a WAV file, or a beep now and then. */
export const openBrowser = (wav: string | null = null): Promise<Browser> => launch(fakeMicrophone(wav));

/** The same as people have it: no page sounds or hears before it was touched. The microphone hears the file over and over. */
export const openBrowserAsItIs = (wav: string): Promise<Browser> =>
  launchAsItIs(['--use-fake-device-for-media-stream', `--use-file-for-fake-audio-capture=${wav}`]);

/** The same, of a user who trusts this authority (PEM), as `certutil` of Debian's libnss3-tools has it. */
export async function openBrowserThatTrusts(authority: string): Promise<Browser> {
  const home = await mkdtemp(join(tmpdir(), 'trusting-home-'));
  const list = join(home, '.pki', 'nssdb');
  await mkdir(list, { recursive: true });
  await writeFile(join(home, 'authority.pem'), authority);
  const certutil = (...args: string[]) => execFileSync('certutil', ['-d', `sql:${list}`, ...args]);
  certutil('-N', '--empty-password');
  certutil('-A', '-t', 'C,,', '-n', 'first-fire', '-i', join(home, 'authority.pem'));
  return launch(fakeMicrophone(null), { ...process.env, HOME: home });
}

/** The same, for which one port of this machine lies behind another. */
export const openBrowserToward = (port: number, behind: number): Promise<Browser> =>
  launch([...fakeMicrophone(null), `--host-resolver-rules=MAP localhost:${port} 127.0.0.1:${behind}`]);

/** The same, with the microphone of the sound server that `env` names. */
export const openBrowserThatHears = (env: NodeJS.ProcessEnv): Promise<Browser> => launch([], env);
