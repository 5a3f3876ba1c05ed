import type { FastifyRequest } from 'fastify';
import type { Bay } from '../bay/bay.ts';
import type { Board } from '../bay/board.ts';
import type { CodeDesk } from '../pairing/code-desk.ts';
import type { Pairing, Pairings } from '../pairing/pairings.ts';
import type { Role } from '../protocol/index.ts';
import { Refused } from '../refused.ts';
import type { Shop } from '../shop/shop.ts';
import type { KnownAddresses } from './known-addresses.ts';

/** What the routes work with. */
export interface ServerContext {
  readonly bays: ReadonlyMap<string, Bay>;
  readonly board: Board;
  readonly desk: CodeDesk;
  readonly pairings: Pairings;
  readonly shop: Shop;
  readonly known: KnownAddresses;
  /** Folder of what is being sent in. */
  readonly incoming: string;
  /** Folder of the Vosk models that are handed to tablets. */
  readonly models: string;
  /** How long a socket may be open and say nothing of use. */
  readonly patienceMs: number;
  /** Monotonic, for rates. */
  readonly nowMs: () => number;
  /** A sentence for the server's terminal. Never holds a code or a token. */
  readonly tell: (sentence: string) => void;
}

/**
 * @throws Refused when this pairing has run out or was let go of, or is of a role that may not do this
 */
function checked(pairing: Pairing | null, roles: readonly Role[]): Pairing {
  if (!pairing) throw new Refused('notPaired', 'This device is not paired, or not any more; pair it again.');
  if (!roles.includes(pairing.role))
    throw new Refused('notYourRole', `This is not for the role of ${pairing.role}.`);
  return pairing;
}

/**
 * The pairing of a device that was known before.
 * @throws Refused as `pairedAs`
 */
export function stillPaired(device: string, { pairings }: ServerContext, roles: readonly Role[]): Pairing {
  return checked(pairings.all().find(pairing => pairing.device === device) ?? null, roles);
}

/**
 * Whose token stands in the request's Authorization header.
 * @throws Refused when it is nobody's, or of a role that may not do this
 */
export function pairedAs(
  request: FastifyRequest,
  { pairings }: ServerContext,
  roles: readonly Role[],
): Pairing {
  const token = /^Bearer ([\w-]{1,200})$/.exec(request.headers.authorization ?? '')?.[1];
  return checked(token === undefined ? null : pairings.find(token), roles);
}
