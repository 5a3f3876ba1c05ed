import { spawn } from 'node:child_process';
import { once } from 'node:events';
import { readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { setTimeout as wait } from 'node:timers/promises';
import { fileURLToPath } from 'node:url';
import { expect, it, onTestFinished } from 'vitest';
import { synthesize } from '../../audio-fixtures/synthesize.ts';
import { encodeWav } from '../../src/voice/audio/wav-encode.ts';
import { startPulse } from '../helpers/pulse.ts';
import { scratchFolder } from '../helpers/scratch.ts';

const root = fileURLToPath(new URL('../..', import.meta.url));
const PATIENCE_MS = 200_000;

it(
  'hears a microphone, obeys stop, and goes on by keys when the microphone vanishes',
  async () => {
    const pulse = await startPulse();
    const folder = scratchFolder();
    const log = join(folder, 'record.jsonl');
    const child = spawn(
      process.execPath,
      ['--import', 'tsx', 'src/terminal/cli.ts', '--silent', '--log', log],
      { cwd: root, env: pulse.env, stdio: ['pipe', 'ignore', 'ignore'] },
    );
    const ended = once(child, 'close');
    onTestFinished(async () => {
      child.kill('SIGKILL');
      await ended;
    });

    const recorded = () => {
      try {
        return readFileSync(log, 'utf8');
      } catch {
        return '';
      }
    };
    /** Does something again and again until the record shows what it should lead to. */
    const until = async (shown: RegExp, again: () => unknown) => {
      for (const begun = performance.now(); !shown.test(recorded()); await wait(200)) {
        if (performance.now() - begun > PATIENCE_MS)
          throw new Error(`${shown} never came: ${recorded().slice(-600)}`);
        await again();
      }
    };
    const say = async (text: string) => {
      const file = join(folder, 'said.wav');
      writeFileSync(file, encodeWav(synthesize('flite-rms', text)));
      const player = spawn('paplay', [`--device=${pulse.sink}`, file], { env: pulse.env, stdio: 'ignore' });
      expect(await once(player, 'close')).toEqual([0, null]);
    };

    // Misunderstood three times, which a busy machine can bring about, only the second person is believed.
    const reply = () => (/beginning with second/.test(recorded()) ? 'second card is right' : 'card is right');
    await until(/"id":"cardRight".*"via":"voice"/, () => say(reply()));
    await until(/"type":"stop","via":"voice"/, () => say('stop'));
    await pulse.kill();
    await until(/"kind":"problem"/, () => {});
    await until(/"id":"allOff".*"via":"keys"/, () => child.stdin.write('all is off\n'));
    child.kill('SIGTERM');
    await ended;
    expect(recorded().split('\n').at(-1)).toBe('');
  },
  15 * 60_000,
);
