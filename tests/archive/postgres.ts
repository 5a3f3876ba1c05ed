import { execFileSync, spawnSync } from 'node:child_process';
import { chmodSync, existsSync, mkdtempSync, readdirSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';

const DEBIAN_FOLDER = '/usr/lib/postgresql';

export interface Server {
  /** The connection string of a database of its own. */
  database(name: string): string;
  stop(): void;
}

/** Debian's newest server programs, or undefined where there are none. */
function programs(): string | undefined {
  if (!existsSync(DEBIAN_FOLDER)) return undefined;
  const [newest] = readdirSync(DEBIAN_FOLDER).sort((a, b) => Number(b) - Number(a));
  return newest && join(DEBIAN_FOLDER, newest, 'bin');
}

/** A PostgreSQL server in a scratch folder, reached by a socket in it; undefined where none is installed. */
export function startPostgres(): Server | undefined {
  const bin = programs();
  if (bin === undefined) return undefined;
  const isRoot = process.getuid?.() === 0;
  const folder = mkdtempSync(join(tmpdir(), 'pg-'));
  // The server refuses to run as root.
  if (isRoot) execFileSync('chown', ['postgres', folder]);
  chmodSync(folder, 0o755);
  const run = (program: string, args: readonly string[]) => {
    const line = [join(bin, program), ...args];
    const [command = '', ...rest] = isRoot ? ['runuser', '-u', 'postgres', '--', ...line] : line;
    const { status, stderr } = spawnSync(command, rest, {
      encoding: 'utf8',
      cwd: folder,
      stdio: ['ignore', 'ignore', 'pipe'],
    });
    if (status !== 0) throw new Error(`${program} failed: ${stderr}`);
  };
  const data = join(folder, 'data');
  run('initdb', ['-D', data, '-U', 'postgres', '-A', 'trust', '--no-sync', '-E', 'UTF8', '--locale=C.UTF-8']);
  const settings = `-c listen_addresses='' -c unix_socket_directories='${folder}' -c fsync=off -c shared_buffers=32MB`;
  run('pg_ctl', ['-D', data, '-o', settings, '-l', join(folder, 'log'), '-w', '-t', '120', 'start']);
  return {
    database(name) {
      run('createdb', ['-h', folder, '-U', 'postgres', name]);
      return `postgres://postgres:secret@${encodeURIComponent(folder)}/${name}`;
    },
    stop() {
      run('pg_ctl', ['-D', data, '-m', 'immediate', 'stop']);
      rmSync(folder, { recursive: true, force: true });
    },
  };
}
