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

/** Of the machine's addresses, those at which a server that listens at `host` answers. */
export function reachableAt(host: string, addresses: readonly string[]): readonly string[] {
  if (host === '::') return addresses;
  if (host === '0.0.0.0') return addresses.filter(address => isIP(address) !== 6);
  return host === '127.0.0.1' ? ['localhost', host] : [host];
}

/** How an address stands in a URL and in a Host header. */
export const inUrl = (address: string): string => (isIP(address) === 6 ? `[${address}]` : address);
