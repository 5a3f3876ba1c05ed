import { execFileSync, spawnSync } from 'node:child_process';
import { existsSync } from 'node:fs';
import { createInterface } from 'node:readline/promises';
import { planSetUp, withoutThem } from './helpers/debian.ts';

/**
 * Speech to recognize, a sound server without a sound card, recorded voices, sound tools, a terminal to drive,
 * readers of vehicle bus logs, a serial line without an adapter, a reader of PDF, a database server, a browser and
 * the list of whom it trusts.
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
  'poppler-utils',
  'postgresql',
  'libnss3-tools',
];

const say = (line: string): void => {
  process.stderr.write(`${line}\n`);
};

/** Asks whoever sits at the terminal; nothing but a yes is one. */
async function agreed(packages: readonly string[]): Promise<boolean> {
  const lines = createInterface({ input: process.stdin, output: process.stderr });
  try {
    const answer = await Promise.race([
      lines.question(`The tests need Debian packages: ${packages.join(' ')}\nInstall them now? [y/N] `),
      new Promise<string>(resolve => lines.once('close', () => resolve('no'))),
    ]);
    return /^y(es)?$/i.test(answer.trim());
  } finally {
    lines.close();
  }
}

/** Runs once before all tests: installs the Debian packages they need where that is agreed to, or says why not. */
export default async function setUp(): Promise<void> {
  const query = spawnSync('dpkg-query', ['-W', '-f', `\${Package} \${Status}\\n`, ...NEEDED], {
    encoding: 'utf8',
  });
  const plan = planSetUp(NEEDED, {
    debian: existsSync('/etc/debian_version'),
    root: process.getuid?.() === 0,
    ci: !['', '0', 'false'].includes(process.env.CI ?? ''),
    terminal: process.stdin.isTTY && process.stderr.isTTY,
    dpkgStatus: query.stdout ?? '',
  });
  switch (plan.kind) {
    case 'nothingToDo':
      return;
    case 'cannot':
      return say(plan.sentence);
    case 'ask':
      if (!(await agreed(plan.packages))) return say(withoutThem(plan.packages, 'not agreed to'));
      return install(plan.packages);
    case 'install':
      return install(plan.packages);
  }
}

function install(packages: readonly string[]): void {
  say(`Installing for the tests: ${packages.join(' ')}`);
  const env = { ...process.env, DEBIAN_FRONTEND: 'noninteractive' };
  try {
    execFileSync('apt-get', ['-qq', 'update'], { env, stdio: ['ignore', 'ignore', 'pipe'] });
    execFileSync('apt-get', ['-qq', '-y', '--no-install-recommends', 'install', ...packages], {
      env,
      stdio: ['ignore', 'ignore', 'pipe'],
    });
  } catch (cause) {
    const why = cause instanceof Error ? cause.message.trim().split('\n').at(-1) : String(cause);
    say(`apt-get could not install ${packages.join(' ')} (${why}); install them, or expect tests to fail.`);
  }
}
