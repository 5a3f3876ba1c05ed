import { randomBytes } from 'node:crypto';

const VALID_MS = 60_000;
const MOST_OPEN = 100;
const COOKIE = '__Secure-first-fire-report';

/** What a cookie is good for, and who got it. */
export interface Pass {
  readonly session: string;
  readonly device: string;
}

/** One-time cookies for a report in a tab of its own, so that no token stands in an address. */
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

  /** The device that it was given to, once for each pass, for its own session, in its time; else null. */
  use(cookies: string | undefined, session: string): string | null {
    const pass = new RegExp(`(?:^|; )${COOKIE}=([\\w-]+)`).exec(cookies ?? '')?.[1] ?? '';
    const open = this.#open.get(pass);
    this.#open.delete(pass);
    return open?.session === session && this.#nowMs() < open.untilMs ? open.device : null;
  }
}
