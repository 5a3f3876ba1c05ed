import { chmodSync, readdirSync, writeFileSync } from 'node:fs';
import { delimiter, join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { chooseSink } from '../../../src/voice/speakers/choose.ts';
import { startPulse } from '../../helpers/pulse.ts';
import { scratchFolder } from '../../helpers/scratch.ts';
import { SimulatedTimer } from '../../helpers/simulated-timer.ts';
import { tone } from '../../helpers/tones.ts';

/** A folder of programs: each a real shell script. */
function programs(scripts: Readonly<Record<string, string>>): string {
  const folder = scratchFolder();
  for (const [name, script] of Object.entries(scripts)) {
    writeFileSync(join(folder, name), `#!/bin/sh\n${script}\n`);
    chmodSync(join(folder, name), 0o755);
  }
  return folder;
}
const linux = (...path: string[]) => ({ platform: 'linux' as const, env: { PATH: path.join(delimiter) } });

describe('where speech goes', () => {
  it('is a real loudspeaker where there is one', async () => {
    const pulse = await startPulse();
    const { sink, notHeard } = await chooseSink({ surroundings: { platform: 'linux', env: pulse.env } });
    expect([sink.description, notHeard]).toEqual(['loudspeaker, through pacat', undefined]);
  });

  it('is the first player that works', async () => {
    const path = programs({ pacat: 'echo "Connection refused" >&2; exit 1', aplay: '/bin/cat > /dev/null' });
    const { sink, notHeard } = await chooseSink({ surroundings: linux(path) });
    expect([sink.description, notHeard]).toEqual(['loudspeaker, through aplay', undefined]);
  });

  it('is silence, with the reason in one sentence, when every player fails', async () => {
    const path = programs({ pacat: 'echo "Connection refused" >&2; exit 1', aplay: 'exit 2' });
    const { sink, notHeard } = await chooseSink({ surroundings: linux(path) });
    expect(sink.description).toMatch(/^silent/);
    expect(notHeard).toBe(
      'Nothing will be heard (pacat: Connection refused; aplay: exit code 2); connect a loudspeaker and install a player, or read the screen.',
    );
  });

  it('is silence, with the names looked for, when no player is installed', async () => {
    const { notHeard } = await chooseSink({ surroundings: linux('/no/such/folder') });
    expect(notHeard).toMatch(/no player is installed, looked for pacat, aplay, play, ffplay/);
    const elsewhere = await chooseSink({ surroundings: { platform: 'aix', env: {} } });
    expect(elsewhere.notHeard).toMatch(/looked for one for aix/);
  });

  it('is silence without a complaint when silence was wished', async () => {
    const { sink, notHeard } = await chooseSink({ silent: true });
    expect([sink.description, notHeard]).toEqual(['silent, sentences are only shown', undefined]);
  });

  it('is the folder that was named', async () => {
    const folder = scratchFolder();
    const { sink } = await chooseSink({ speakTo: folder, sleep: new SimulatedTimer().sleep });
    await sink.play(tone(0.1), 'hello');
    expect(readdirSync(folder)).toEqual(['0001-hello.wav']);
  });
});
