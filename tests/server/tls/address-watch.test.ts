import { expect, test } from 'vitest';
import { AddressWatch } from '../../../src/server/tls/address-watch.ts';

test('another address is told of once, with what is new of it, and looked for no oftener than once a second', () => {
  let nowMs = 0;
  let addresses: readonly string[] = ['192.0.2.7', 'localhost'];
  let read = 0;
  const told: unknown[] = [];
  const watch = new AddressWatch(
    () => {
      read += 1;
      return addresses;
    },
    () => nowMs,
    (all, added) => told.push({ all, added }),
  );
  nowMs = 2000;
  watch.look();
  expect(told).toEqual([]);
  addresses = ['198.51.100.9', 'localhost'];
  for (let asked = 0; asked < 1000; asked += 1) watch.look();
  expect(read).toBe(2);
  nowMs = 3500;
  watch.look();
  watch.look();
  expect(told).toEqual([{ all: addresses, added: ['198.51.100.9'] }]);
  expect(watch.addresses).toBe(addresses);
});
