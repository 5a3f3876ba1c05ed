import { execFileSync, spawnSync } from 'node:child_process';
import { existsSync } from 'node:fs';
import { planSetUp } from './helpers/debian.ts';

/**
 * Speech to recognize, a sound server without a sound card, recorded voices, sound tools, a terminal to drive,
 * readers of vehicle bus logs, a serial line without an adapter, a database server, a browser.
 */
const NEEDED = [
  'flite',
  'festival',
  'festvox-us-slt-hts',
  'festvox-kallpc16k',
  'festvox-kdlpc16k',
  'espeak-ng',
  'pulseaudio',
  'pulseaudio-utils',
  'asterisk-core-sounds-en',
  'asterisk-core-sounds-en-g722',
  'asterisk-core-sounds-fr-g722',
  'pocketsphinx-testdata',
  'ffmpeg',
  'sox',
  'tmux',
  'tshark',
  'can-utils',
  'chromium',
  'socat',
  'postgresql',
];

const say = (line: string) => process.stderr.write(`${line}\n`);

/** Runs once before all tests: installs the Debian packages they need, or says why it cannot. */
export default function setUp(): void {
  const query = spawnSync('dpkg-query', ['-W', '-f', `\${Package} \${Status}\\n`, ...NEEDED], {
    encoding: 'utf8',
  });
  const plan = planSetUp(NEEDED, {
    debian: existsSync('/etc/debian_version'),
    root: process.getuid?.() === 0,
    dpkgStatus: query.stdout ?? '',
  });
  if (plan.kind === 'cannot') say(plan.sentence);
  if (plan.kind !== 'install') return;
  say(`Installing for the tests: ${plan.packages.join(' ')}`);
  const env = { ...process.env, DEBIAN_FRONTEND: 'noninteractive' };
  try {
    execFileSync('apt-get', ['-qq', 'update'], { env, stdio: ['ignore', 'ignore', 'pipe'] });
    execFileSync('apt-get', ['-qq', '-y', '--no-install-recommends', 'install', ...plan.packages], {
      env,
      stdio: ['ignore', 'ignore', 'pipe'],
    });
  } catch (cause) {
    const why = cause instanceof Error ? cause.message.trim().split('\n').at(-1) : String(cause);
    say(
      `apt-get could not install ${plan.packages.join(' ')} (${why}); install them, or expect tests to fail.`,
    );
  }
}
