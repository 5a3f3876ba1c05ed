import { existsSync, mkdirSync, readdirSync, renameSync, symlinkSync, writeFileSync } from 'node:fs';
import { createServer } from 'node:net';
import { join } from 'node:path';
import { setTimeout as wait } from 'node:timers/promises';
import { fileURLToPath } from 'node:url';
import type { Role } from '../../src/server/protocol/index.ts';
import { Started } from '../../tests/helpers/started.ts';
import { inLineMs } from './in-line.ts';

const root = fileURLToPath(new URL('../..', import.meta.url));

/** The library of Debian's package faketime. */
export const FAKETIME = ['x86_64', 'aarch64']
  .map(kind => `/usr/lib/${kind}-linux-gnu/faketime/libfaketime.so.1`)
  .find(path => existsSync(path));

/** A folder to start the program in with the words of the start script, so that what it rescues falls in there. */
export function startFolder(scratch: string): string {
  const folder = join(scratch, 'started-here');
  mkdirSync(folder);
  for (const name of readdirSync(root)) symlinkSync(join(root, name), join(folder, name));
  return folder;
}

const freePort = () =>
  new Promise<number>((resolve, reject) => {
    const probe = createServer();
    probe.on('error', reject);
    probe.listen(0, '127.0.0.1', () => {
      const address = probe.address();
      probe.close(() => resolve(typeof address === 'object' && address ? address.port : 0));
    });
  });

const MOST_STARTS = 30;

/** The server as a user starts it, to be killed, halted and started again. */
export class ServerProcess {
  readonly port: number;
  readonly base: string;
  readonly shop: string;
  readonly #bays: readonly string[];
  readonly #cwd: string;
  readonly #clockFile: string;
  #started: Started | null = null;
  #toldBefore = '';
  /** Counts what keeps anybody from being answered: the server was killed, or halted. */
  disturbances = 0;
  /** How often it could not be started, as on a full disk. */
  didNotComeUp = 0;
  /** Counts the runs of the server. */
  runs = 0;
  /** It lives, and is not halted. */
  isUp = false;
  /** How it ended where nobody had ended it. */
  readonly endedByItself: string[] = [];
  #isWanted = false;

  private constructor(port: number, shop: string, bays: readonly string[], scratch: string) {
    this.port = port;
    this.base = `https://127.0.0.1:${port}`;
    this.shop = shop;
    this.#bays = bays;
    this.#cwd = startFolder(scratch);
    this.#clockFile = join(scratch, 'clock');
    this.setClockBack(0);
  }

  static async start(shop: string, bays: readonly string[], scratch: string): Promise<ServerProcess> {
    const server = new ServerProcess(await freePort(), shop, bays, scratch);
    await server.start();
    return server;
  }

  /** For how long it, and the program that measures, have stood in line for a processor; null where nobody says. */
  get inLineMs(): number | null {
    const [own, served] = [inLineMs(process.pid), inLineMs(this.#started?.child.pid)];
    return own === null || served === null ? null : own + served;
  }

  get cwd(): string {
    return this.#cwd;
  }

  async start(): Promise<void> {
    const env: NodeJS.ProcessEnv =
      FAKETIME === undefined
        ? {}
        : {
            LD_PRELOAD: FAKETIME,
            FAKETIME_TIMESTAMP_FILE: this.#clockFile,
            FAKETIME_CACHE_DURATION: '1',
            // The clock on the wall is set; a monotonic clock cannot be.
            FAKETIME_DONT_FAKE_MONOTONIC: '1',
            NO_FAKE_STAT: '1',
          };
    const words = ['serve', '--units', 'metric', '--host', '127.0.0.1', '--port', String(this.port)];
    const started = new Started([...words, '--shop', this.shop, '--bay', ...this.#bays], {
      env,
      cwd: this.#cwd,
    });
    this.#started = started;
    void started.ended.then(({ exitCode, signal }) => {
      this.isUp = false;
      if (this.#started === started && this.#isWanted)
        this.endedByItself.push(`exit code ${exitCode}, signal ${signal}: ${started.told.slice(-2000)}`);
    });
    await started.tells('Pairing codes');
    this.#isWanted = true;
    this.runs += 1;
    this.isUp = true;
  }

  /** kill -9, and so long without a server. */
  async killFor(downMs: number): Promise<void> {
    this.#fall();
    this.#started?.signal('SIGKILL');
    await this.#started?.ended;
    this.#toldBefore = `${this.allTold}\n=== killed\n`;
    this.#started = null;
    await wait(downMs);
    await this.#startAgain();
  }

  /** On a full disk it may not come up: then once more, as somebody at the laptop would. */
  async #startAgain(): Promise<void> {
    for (let tries = 1; ; tries += 1) {
      try {
        return await this.start();
      } catch (error) {
        this.#toldBefore = `${this.allTold}\n=== did not come up\n`;
        this.#started = null;
        this.didNotComeUp += 1;
        if (tries >= MOST_STARTS) throw error;
        await wait(1000);
      }
    }
  }

  /** It is started again until it stands, as somebody at the laptop would. */
  async haltFor(ms: number): Promise<void> {
    this.#fall();
    this.#started?.signal('SIGSTOP');
    await wait(ms);
    this.#started?.signal('SIGCONT');
    this.isUp = true;
    this.#isWanted = true;
  }

  async end(): Promise<number | null> {
    this.#fall();
    this.#started?.signal('SIGTERM');
    return (await this.#started?.ended)?.exitCode ?? null;
  }

  /** Whatever becomes of the run, nothing is left behind. */
  killAtOnce(): void {
    this.#isWanted = false;
    this.#started?.signal('SIGKILL');
  }

  /** The clock on the wall, against the right time. */
  setClockBack(seconds: number): void {
    // The library reads it at any moment, and one that is empty makes time stand still.
    writeFileSync(`${this.#clockFile}.new`, seconds === 0 ? '+0\n' : `-${Math.round(seconds)}s\n`);
    renameSync(`${this.#clockFile}.new`, this.#clockFile);
  }

  /** The code that the terminal showed last. */
  codeOf(bay: string, role: Role): string {
    const found = [
      ...(this.#started?.told ?? '').matchAll(new RegExp(`  ${bay} +${role} +(\\d{3}) (\\d{3})`, 'g')),
    ].at(-1);
    return `${found?.[1] ?? ''}${found?.[2] ?? ''}`;
  }

  /** All that its terminal has shown, in all its runs. */
  get allTold(): string {
    return this.#toldBefore + (this.#started?.told ?? '');
  }

  #fall(): void {
    this.isUp = false;
    this.#isWanted = false;
    this.disturbances += 1;
  }
}
