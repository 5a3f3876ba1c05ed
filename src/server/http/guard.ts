import type { FastifyRequest } from 'fastify';
import { Refused } from '../refused.ts';
import { inUrl } from '../tls/addresses.ts';

/** The names by which this server answers, and the pages that may talk to it: its own. */
export class Guard {
  readonly #lookUp: () => void;
  #addresses: readonly string[];
  #port = 0;
  #hosts: ReadonlySet<string> = new Set();

  /** @param lookUp whether the machine has another address by now, asked when a name is not known: `answersAt` says so */
  constructor(addresses: readonly string[], lookUp: () => void) {
    this.#addresses = addresses;
    this.#lookUp = lookUp;
  }

  /** Once the port is known. */
  listensOn(port: number): void {
    this.#port = port;
    this.#name();
  }

  get port(): number {
    return this.#port;
  }

  /** From now on it answers at these, in place of those before. */
  answersAt(addresses: readonly string[]): void {
    this.#addresses = addresses;
    this.#name();
  }

  #name(): void {
    const port = this.#port;
    const named = this.#addresses.map(address => `${inUrl(address)}:${port}`);
    // A page at the usual port of HTTPS does not name it.
    const bare = port === 443 ? this.#addresses.map(inUrl) : [];
    this.#hosts = new Set([...named, ...bare]);
  }

  /**
   * A name that was bent to this address by somebody's DNS, or a page from elsewhere, gets nothing.
   * @throws Refused `wrongOrigin`
   */
  check({ headers, method }: FastifyRequest): void {
    const host = headers.host?.toLowerCase() ?? '';
    if (!this.#hosts.has(host)) this.#lookUp();
    if (!this.#hosts.has(host))
      throw new Refused(
        'wrongOrigin',
        'This server does not answer to that name; use the address that its terminal shows.',
      );
    const changes = !['GET', 'HEAD'].includes(method) || headers.upgrade !== undefined;
    if (!changes && headers.origin === undefined) return;
    const origin = headers.origin?.toLowerCase() ?? '';
    if (!origin.startsWith('https://') || !this.#hosts.has(origin.slice('https://'.length)))
      throw new Refused('wrongOrigin', 'Only the page of this server may talk to it; open its own address.');
  }
}
