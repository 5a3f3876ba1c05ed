import { BlockList, isIP } from 'node:net';
import { Extension } from '@peculiar/x509';

/** What an authority may vouch for: names with all that stands below them, and ranges of addresses (`10.0.0.0/8`). */
export interface Permitted {
  readonly names: readonly string[];
  readonly ranges: readonly string[];
}

/**
 * The addresses of networks that are nobody's in the world at large (RFC 1918, RFC 3927, RFC 4193, RFC 6598), and of a
 * machine's own loop: with the key of an authority that vouches for no others, nobody imitates a bank.
 */
const PRIVATE_RANGES = [
  '10.0.0.0/8',
  '172.16.0.0/12',
  '192.168.0.0/16',
  '169.254.0.0/16',
  '100.64.0.0/10',
  '127.0.0.0/8',
  'fc00::/7',
  '::1/128',
] as const;

const familyOf = (address: string) => (isIP(address) === 6 ? 'ipv6' : 'ipv4');

function parts(range: string): { readonly address: string; readonly bits: number } {
  const [address = '', bits = ''] = range.split('/');
  return { address, bits: Number(bits) };
}

/** Whether an authority with these limits may vouch for this name or address. */
export function permits({ names, ranges }: Permitted, host: string): boolean {
  if (isIP(host) === 0)
    return names.some(name => host.toLowerCase() === name || host.toLowerCase().endsWith(`.${name}`));
  const list = new BlockList();
  for (const range of ranges) {
    const { address, bits } = parts(range);
    list.addSubnet(address, bits, familyOf(address));
  }
  return list.check(host, familyOf(host));
}

/** Private networks, the names that a shop's own network gives, and these hosts of the machine itself. */
export function permittedFor(hosts: readonly string[]): Permitted {
  const ranges: string[] = [...PRIVATE_RANGES];
  const names = new Set(['localhost', 'local', 'lan', 'home.arpa', 'internal']);
  for (const host of hosts) {
    if (isIP(host) === 0) names.add(host.toLowerCase());
    else if (!permits({ names: [], ranges }, host)) ranges.push(`${host}/${isIP(host) === 6 ? 128 : 32}`);
  }
  return { names: [...names], ranges };
}

/** DER (X.690): a tag, a length, what is inside. */
function der(tag: number, ...inside: readonly Uint8Array[]): Uint8Array {
  const content = Buffer.concat(inside);
  const { length } = content;
  const size =
    length < 0x80 ? [length] : length < 0x100 ? [0x81, length] : [0x82, length >> 8, length & 0xff];
  return Buffer.concat([Buffer.from([tag, ...size]), content]);
}

function bytesOf(address: string): number[] {
  if (isIP(address) === 4) return address.split('.').map(Number);
  const [head = '', tail] = address.split('%', 1)[0]?.split('::') ?? [];
  const words = (text: string) => (text === '' ? [] : text.split(':').map(word => Number.parseInt(word, 16)));
  const [before, after] = [words(head), words(tail ?? '')];
  const zeros = tail === undefined ? 0 : 8 - before.length - after.length;
  return [...before, ...Array<number>(zeros).fill(0), ...after].flatMap(word => [word >> 8, word & 0xff]);
}

/** An address with its mask, as RFC 5280, section 4.2.1.10 has it. */
function range(text: string): Uint8Array {
  const { address, bits } = parts(text);
  const bytes = bytesOf(address);
  const mask = bytes.map((_, i) => (0xff00 >> Math.min(8, Math.max(0, bits - 8 * i))) & 0xff);
  return Buffer.from([...bytes.map((byte, i) => byte & (mask[i] ?? 0)), ...mask]);
}

const SEQUENCE = 0x30;
const PERMITTED = 0xa0;
const DNS_NAME = 0x82;
const IP_ADDRESS = 0x87;
/** RFC 5280, section 4.2.1.10. */
const NAME_CONSTRAINTS = '2.5.29.30';

/** The limits as they stand in the authority's certificate. */
export function nameConstraints({ names, ranges }: Permitted): Extension {
  const subtrees = [
    ...names.map(name => der(SEQUENCE, der(DNS_NAME, Buffer.from(name, 'ascii')))),
    ...ranges.map(each => der(SEQUENCE, der(IP_ADDRESS, range(each)))),
  ];
  return new Extension(NAME_CONSTRAINTS, true, Uint8Array.from(der(SEQUENCE, der(PERMITTED, ...subtrees))));
}
