import { describe, expect, it } from 'vitest';
import { pageAddresses, reachableAt } from '../../../src/server/tls/addresses.ts';

const machine = ['192.0.2.7', '2001:db8::7', 'bay', 'localhost', '127.0.0.1'];

describe('the addresses that are shown', () => {
  it('are all of the machine where the server listens everywhere, the newer kind only where it does there', () => {
    expect(reachableAt('::', machine)).toEqual(machine);
    expect(reachableAt('0.0.0.0', machine)).toEqual(['192.0.2.7', 'bay', 'localhost', '127.0.0.1']);
  });

  it('are no others than the one it listens at', () => {
    expect(reachableAt('127.0.0.1', machine)).toEqual(['localhost', '127.0.0.1']);
    expect(reachableAt('192.0.2.7', machine)).toEqual(['192.0.2.7']);
  });
});

describe('whoever opens the page', () => {
  it('is a device of the network by its numbers, the older kind first, then by the name of the machine; and the machine itself', () => {
    const interfaces = ['2001:db8::7', '192.0.2.7', '198.51.100.7', 'bay', 'localhost', '127.0.0.1'];
    expect(pageAddresses('::', interfaces)).toEqual({
      devices: ['192.0.2.7', '198.51.100.7', '2001:db8::7', 'bay'],
      itself: 'localhost',
    });
    expect(pageAddresses('0.0.0.0', interfaces)).toEqual({
      devices: ['192.0.2.7', '198.51.100.7', 'bay'],
      itself: 'localhost',
    });
  });

  it('is nobody but the machine itself where that is in no network, or in one of the kind at which it does not listen', () => {
    for (const [host, addresses] of [
      ['::', ['bay', 'localhost', '127.0.0.1']],
      ['0.0.0.0', ['2001:db8::7', 'bay', 'localhost', '127.0.0.1']],
      ['127.0.0.1', machine],
      ['localhost', machine],
    ] as const)
      expect(pageAddresses(host, addresses)).toEqual({ devices: [], itself: 'localhost' });
    expect(pageAddresses('::1', machine)).toEqual({ devices: [], itself: '::1' });
  });

  it('goes to the one address, or the name, at which it listens', () => {
    for (const host of ['192.0.2.7', '2001:db8::7', 'bay.example'])
      expect(pageAddresses(host, machine)).toEqual({ devices: [host], itself: null });
  });
});
