import { randomBytes } from 'node:crypto';

/** A working day: a tab that is left open is reloaded as a page, for as long as its device is paired. */
const VALID_MS = 12 * 3_600_000;
const MOST_OPEN = 500;
const COOKIE = '__Secure-first-fire-report';

/** What a cookie is good for, and who got it. */
export interface Pass {
  readonly session: string;
  readonly device: string;
}

/**
 * Cookies for a report in a tab of its own, so that no token stands in an address: each good for one report, for the
 * device that asked, while that is paired.
 */
export class ReportPasses {
  readonly #nowMs: () => number;
  readonly #open = new Map<string, Pass & { readonly untilMs: number }>();

  constructor(nowMs: () => number) {
    this.#nowMs = nowMs;
  }

  /** @returns the value of a Set-Cookie header, sent back for the path of this report only */
  issue(of: Pass, path: string): string {
    const [oldest] = this.#open.keys();
    if (this.#open.size >= MOST_OPEN && oldest !== undefined) this.#open.delete(oldest);
    const pass = randomBytes(32).toString('base64url');
    this.#open.set(pass, { ...of, untilMs: this.#nowMs() + VALID_MS });
    return `${COOKIE}=${pass}; Path=${path}; Max-Age=${VALID_MS / 1000}; Secure; HttpOnly; SameSite=Strict`;
  }

  /** The device that it was given to, for its own session, in its time; else null. */
  holder(cookies: string | undefined, session: string): string | null {
    const pass = new RegExp(`(?:^|; )${COOKIE}=([\\w-]+)`).exec(cookies ?? '')?.[1] ?? '';
    const open = this.#open.get(pass);
    return open?.session === session && this.#nowMs() < open.untilMs ? open.device : null;
  }
}
