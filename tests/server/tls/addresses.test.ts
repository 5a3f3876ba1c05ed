import { describe, expect, it } from 'vitest';
import { reachableAt } from '../../../src/server/tls/addresses.ts';

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
