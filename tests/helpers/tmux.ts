import { execFileSync } from 'node:child_process';
import { vi } from 'vitest';

export interface TmuxOptions {
  readonly columns: number;
  readonly rows: number;
  readonly env?: Readonly<Record<string, string>>;
}

/** A real terminal without anybody in front of it: a tmux server of its own with one shell in it. */
export class Tmux {
  static #count = 0;
  readonly #name: string;

  constructor({ columns, rows, env = {} }: TmuxOptions) {
    Tmux.#count += 1;
    this.#name = `first-fire-test-${process.pid}-${Tmux.#count}`;
    const variables = Object.entries(env).map(([name, value]) => `${name}=${value}`);
    // Ink draws no screen where a CI is named; an escape is handed on at once.
    const shell = ['env', '-u', 'CI', '-u', 'NO_COLOR', 'PS1=$ ', ...variables, 'sh'];
    this.#tmux('new-session', '-d', '-x', String(columns), '-y', String(rows), ...shell);
    this.#tmux('set-option', '-s', 'escape-time', '0');
  }

  #tmux(...args: string[]): string {
    return execFileSync('tmux', ['-L', this.#name, '-f', '/dev/null', ...args], {
      encoding: 'utf8',
      env: { ...process.env, LC_ALL: 'C.UTF-8' },
    });
  }

  /** Types a text as it is, then Enter. */
  enter(text: string): void {
    this.#tmux('send-keys', '-l', text);
    this.#tmux('send-keys', 'Enter');
  }

  /** Presses keys by tmux's names for them: `Escape`, `C-c`, `Up`. */
  press(...keys: string[]): void {
    this.#tmux('send-keys', ...keys);
  }

  resize(columns: number, rows: number): void {
    this.#tmux('resize-window', '-x', String(columns), '-y', String(rows));
  }

  screen(): string {
    return this.#tmux('capture-pane', '-p');
  }

  /** The same with its colours and styles as escape sequences. */
  styledScreen(): string {
    return this.#tmux('capture-pane', '-e', '-p');
  }

  /** A fact tmux knows about the terminal, e.g. `cursor_flag`, `alternate_on`. */
  fact(name: string): string {
    return this.#tmux('display-message', '-p', `#{${name}}`).trim();
  }

  /** Looks at the screen until it shows the text; how long that takes does not matter. */
  async shows(text: string): Promise<string> {
    return this.#until(() => {
      const screen = this.screen();
      if (!screen.includes(text)) throw new Error(`The terminal does not show "${text}":\n${screen}`);
      return screen;
    });
  }

  /** Waits until what the shell has started has ended. */
  async ended(): Promise<void> {
    await this.#until(() => {
      const running = this.fact('pane_current_command');
      if (running !== 'sh') throw new Error(`${running} is still running:\n${this.screen()}`);
    });
  }

  #until<T>(look: () => T): Promise<T> {
    return vi.waitFor(look, { timeout: 200_000, interval: 100 });
  }

  close(): void {
    this.#tmux('kill-server');
  }
}
