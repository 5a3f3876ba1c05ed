import { existsSync } from 'node:fs';
import { join } from 'node:path';
import { setTimeout as wait } from 'node:timers/promises';
import { Started } from '../../tests/helpers/started.ts';
import type { Chance } from './chance.ts';

const STOPPED = '== STOPPED';
const STOP_WITHIN_MS = 60_000;

/** A session in a terminal, without a server, killed and resumed. */
export class Terminal {
  readonly records: string[] = [];
  readonly stopsMs: number[] = [];
  unanswered = 0;
  killed = 0;
  leftByEof = 0;
  resumed = 0;
  readonly refusedToResume: string[] = [];
  readonly #folder: string;
  readonly #cwd: string;
  readonly #chance: Chance;
  #session: Started | null = null;

  constructor(folder: string, cwd: string, chance: Chance) {
    this.#folder = folder;
    this.#cwd = cwd;
    this.#chance = chance;
  }

  async lead(goesOn: () => boolean): Promise<void> {
    while (goesOn()) {
      const path = join(this.#folder, `terminal-${this.records.length + 1}.jsonl`);
      this.records.push(path);
      let exitCode = await this.#run(['--log', path], goesOn);
      // Killed before it had begun its record, it has nothing to go on with.
      while (goesOn() && exitCode !== 0 && exitCode !== 3 && existsSync(path)) {
        this.resumed += 1;
        exitCode = await this.#run(['resume', path], goesOn);
        if (exitCode === 1) {
          this.refusedToResume.push(this.#session?.told.slice(-400) ?? '');
          break;
        }
      }
    }
  }

  /** kill -9, wherever it is. */
  kill(): void {
    if (this.#session?.child.exitCode !== null) return;
    this.killed += 1;
    this.#session.signal('SIGKILL');
  }

  killAtOnce(): void {
    this.#session?.signal('SIGKILL');
  }

  async #run(words: readonly string[], goesOn: () => boolean): Promise<number | null> {
    const session = new Started(
      [...words, '--no-mic', '--silent', ...(words[0] === 'resume' ? [] : ['--units', 'metric'])],
      {
        cwd: this.#cwd,
        keys: 'typed',
      },
    );
    this.#session = session;
    session.child.stdin?.on('error', () => {});
    let isOver = false;
    void session.ended.then(() => {
      isOver = true;
    });
    while (!isOver && goesOn()) {
      await wait(this.#chance.between(300, 2000));
      const asked = session.told.split('\n').findLast(line => /^(Say|Number|Type)/.test(line)) ?? '';
      if (asked === '' || isOver) continue;
      if (this.#chance.happens(0.03)) {
        this.leftByEof += 1;
        session.closeKeys();
        break;
      }
      if (this.#chance.happens(0.1)) await this.#stop(session);
      else session.type(this.#reply(asked));
    }
    if (!goesOn()) session.closeKeys();
    return (await session.ended).exitCode;
  }

  #reply(asked: string): string {
    const offered = [...asked.matchAll(/"([^"]+)"/g)].map(([, words]) => words ?? '');
    if (offered.length === 0) return String(Math.round(this.#chance.between(5, 60)));
    if (offered.includes('correct')) return 'correct';
    return this.#chance.happens(0.85) ? (offered[0] ?? '') : this.#chance.one(offered);
  }

  async #stop(session: Started): Promise<void> {
    const shown = () => session.told.split(STOPPED).length;
    // One that is stopped already shows nothing new.
    if (session.told.lastIndexOf(STOPPED) > session.told.lastIndexOf('== Engine')) return;
    const before = shown();
    const sentMs = performance.now();
    session.type('stop');
    while (session.child.exitCode === null && session.child.signalCode === null) {
      if (shown() > before) {
        this.stopsMs.push(performance.now() - sentMs);
        return;
      }
      if (performance.now() - sentMs > STOP_WITHIN_MS) {
        this.unanswered += 1;
        return;
      }
      await wait(2);
    }
  }
}
