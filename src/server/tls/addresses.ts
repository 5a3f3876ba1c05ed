import { isIP } from 'node:net';
import { hostname, networkInterfaces } from 'node:os';

/** Addresses at which this machine can be reached: those of the network first, then its name, then its own loop. */
export function machineAddresses(): readonly string[] {
  const outside = Object.values(networkInterfaces())
    .flatMap(list => list ?? [])
    // Link-local addresses need a zone that a page cannot name.
    .filter(({ internal, address }) => !internal && !/^fe80/i.test(address))
    .map(({ address }) => address);
  return [...new Set([...outside, hostname().toLowerCase(), 'localhost', '127.0.0.1'])];
}

const EVERYWHERE: readonly string[] = ['0.0.0.0', '::'];

/** Of the machine's addresses, those at which a server that listens at `host` answers. */
export function reachableAt(host: string, addresses: readonly string[]): readonly string[] {
  if (host === '::') return addresses;
  if (host === '0.0.0.0') return addresses.filter(address => isIP(address) !== 6);
  return host === '127.0.0.1' ? ['localhost', host] : [host];
}

/** The addresses of a page, by who gets there. */
export interface PageAddresses {
  /** Other devices do, at the first most surely; empty where none does. */
  readonly devices: readonly string[];
  /** The machine itself; null where it listens at one address of a network only. */
  readonly itself: string | null;
}

const isOwn = (address: string) => address === 'localhost' || /^(127\.|::1$)/.test(address);

/** By whom a server that listens at `host` is reached, and how; a name of the machine is worth nothing without a network. */
export function pageAddresses(host: string, addresses: readonly string[]): PageAddresses {
  const reachable = reachableAt(host, addresses);
  const inNetwork = (family: number) =>
    reachable.filter(address => isIP(address) === family && !isOwn(address));
  const numbers = [...inNetwork(4), ...inNetwork(6)];
  const names = inNetwork(0);
  return {
    devices: numbers.length === 0 && EVERYWHERE.includes(host) ? [] : [...numbers, ...names],
    itself: reachable.find(isOwn) ?? null,
  };
}

/** How an address stands in a URL and in a Host header. */
export const inUrl = (address: string): string => (isIP(address) === 6 ? `[${address}]` : address);
