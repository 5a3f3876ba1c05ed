import { spawn } from 'node:child_process';
import { readFileSync, rmSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { describe, expect, it, onTestFinished } from 'vitest';
import { verifyLog } from '../../src/record/index.ts';
import { scratchFolder } from '../helpers/scratch.ts';
import { mountTmpfs } from '../record/support.ts';

const cli = fileURLToPath(new URL('../../src/terminal/cli.ts', import.meta.url));

/** A session in a process of its own, driven by lines; everything that it leaves is in `folder`. */
function startSession(folder: string, log: string) {
  const args = ['--import', import.meta.resolve('tsx'), cli, '--no-mic', '--silent', '--log', log];
  const child = spawn(process.execPath, args, {
    cwd: folder,
    env: { ...process.env, HOME: folder },
  });
  onTestFinished(() => {
    child.kill('SIGKILL');
  });
  let told = '';
  let look = () => {};
  for (const stream of [child.stdout, child.stderr])
    stream.on('data', (data: Buffer) => {
      told += data.toString();
      look();
    });
  const ended = new Promise<NodeJS.Signals | null>(resolve => {
    child.on('close', (_code, by) => resolve(by));
  });
  return {
    type: (line: string) => child.stdin.write(`${line}\n`),
    kill: (signal: NodeJS.Signals) => child.kill(signal),
    told: () => told,
    ended,
    tells: (words: string) =>
      new Promise<void>((resolve, reject) => {
        look = () => told.includes(words) && resolve();
        look();
        void ended.then(() => reject(new Error(`Ended without "${words}":\n${told}`)));
      }),
  };
}

describe('a session that a signal ends while its disk takes nothing', () => {
  it.each(['SIGTERM', 'SIGHUP'] as const)(
    'saves the whole record elsewhere before %s ends it, and says where',
    async signal => {
      const folder = scratchFolder();
      const disk = mountTmpfs(folder, 'size=64k');
      // Where nobody may mount a disk that can be filled, the file is taken away.
      const log = join(disk ?? folder, 'log.jsonl');
      const session = startSession(folder, log);
      await session.tells('Say: ');
      if (disk === undefined) rmSync(log);
      else expect(() => writeFileSync(join(disk, 'filler'), Buffer.alloc(1 << 20))).toThrow('ENOSPC');
      // A full disk still takes what fits behind the last line.
      for (let turn = 0; turn < 12; turn += 1) session.type('say again');
      await session.tells('can no longer be written');
      session.kill(signal);
      expect(await session.ended).toBe(signal);
      const [, saved = ''] = /the whole record is in (\S+\.jsonl): keep that file/.exec(session.told()) ?? [];
      expect(saved).toContain(folder);
      expect(await verifyLog(saved)).toMatchObject({ ok: true });
      expect(readFileSync(saved, 'utf8')).toContain('"heard"');
    },
  );

  it('leaves nothing else behind where the disk is well', async () => {
    const folder = scratchFolder();
    const log = join(folder, 'log.jsonl');
    const session = startSession(folder, log);
    await session.tells('Say: ');
    session.kill('SIGTERM');
    expect(await session.ended).toBe('SIGTERM');
    expect(session.told()).not.toContain('the whole record is in');
    expect(await verifyLog(log)).toMatchObject({ ok: true });
  });
});
