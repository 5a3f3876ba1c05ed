import { createHash, randomInt, timingSafeEqual } from 'node:crypto';
import { type Role, roles } from '../protocol/index.ts';

/** How long six digits are worth something. */
export const CODE_VALID_MS = 10 * 60_000;

export interface OpenCode {
  readonly bay: string;
  readonly role: Role;
  /** Six digits. */
  readonly code: string;
  readonly expiresAtMs: number;
}

const digest = (text: string) => createHash('sha256').update(text).digest();

/** The pairing codes that are open now: one for each bay and role, each good for one device. */
export class CodeDesk {
  readonly #nowMs: () => number;
  readonly #onChange: () => void;
  #codes: readonly OpenCode[] = [];

  /** @param onChange called when there are other codes to be shown */
  constructor(bays: readonly string[], nowMs: () => number, onChange: () => void = () => {}) {
    this.#nowMs = nowMs;
    this.#onChange = onChange;
    for (const bay of bays) for (const role of roles) this.#renew(bay, role);
  }

  /** All codes, those that have run out made anew. */
  codes(): readonly OpenCode[] {
    const old = this.#codes.filter(({ expiresAtMs }) => expiresAtMs <= this.#nowMs());
    for (const { bay, role } of old) this.#renew(bay, role);
    if (old.length > 0) this.#onChange();
    return this.#codes;
  }

  /** What a code is good for; it is used up then. Null when it is wrong. */
  redeem(code: string): { readonly bay: string; readonly role: Role } | null {
    const given = digest(code);
    // Every code is compared, and each in the same time, so that the time tells nothing.
    const matches = this.codes().filter(open => timingSafeEqual(digest(open.code), given));
    const [found] = matches;
    if (!found) return null;
    this.#renew(found.bay, found.role);
    this.#onChange();
    return { bay: found.bay, role: found.role };
  }

  #renew(bay: string, role: Role): void {
    const taken = new Set(this.#codes.map(open => open.code));
    let code: string;
    do code = String(randomInt(1_000_000)).padStart(6, '0');
    while (taken.has(code));
    const fresh = { bay, role, code, expiresAtMs: this.#nowMs() + CODE_VALID_MS };
    const isSame = (open: OpenCode) => open.bay === bay && open.role === role;
    this.#codes = this.#codes.some(isSame)
      ? this.#codes.map(open => (isSame(open) ? fresh : open))
      : [...this.#codes, fresh];
  }
}
