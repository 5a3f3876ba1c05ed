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

const launch = (args: readonly string[], env = process.env): Promise<Browser> =>
  chromium.launch({
    executablePath: '/usr/bin/chromium',
    headless: true,
    args: [...quiet, '--use-fake-ui-for-media-stream', '--autoplay-policy=no-user-gesture-required', ...args],
    env,
  });

/** Debian's Chromium, with a microphone that hears a WAV file, or a beep now and then. */
export const openBrowser = (wav: string | null = null): Promise<Browser> => launch(fakeMicrophone(wav));

/** The same, with the microphone of the sound server that `env` names. */
export const openBrowserThatHears = (env: NodeJS.ProcessEnv): Promise<Browser> => launch([], env);
