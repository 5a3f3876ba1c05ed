import { afterEach, expect, it, vi } from 'vitest';
import { type PairAnswer, PROTOCOL_VERSION } from '../../src/server/protocol/index.ts';
import { kept } from '../../src/tablet/kept.ts';
import {
  forgetPairing,
  keepJoined,
  keepPairing,
  loadJoined,
  loadPairing,
} from '../../src/tablet/remote/pairing.ts';

const pairing: PairAnswer = {
  v: PROTOCOL_VERSION,
  token: 'a-token-of-this-test',
  role: 'second',
  bay: 'bay 1',
  expiresAtMs: 1,
};

afterEach(() => vi.unstubAllGlobals());

/** What a browser keeps, as one with room for it does. */
function withRoom() {
  const items = new Map<string, string>();
  vi.stubGlobal('localStorage', {
    getItem: (key: string) => items.get(key) ?? null,
    setItem: (key: string, text: string) => void items.set(key, text),
    removeItem: (key: string) => void items.delete(key),
  });
  return items;
}

it('a device that was in its bay is there again when the page is loaded anew, until it has left', () => {
  const items = withRoom();
  expect([loadPairing(), loadJoined()]).toEqual([null, null]);
  keepPairing(pairing);
  expect([loadPairing(), loadJoined()]).toEqual([pairing, null]);
  keepJoined(true);
  expect(loadJoined()).toEqual(pairing);
  keepJoined(false);
  expect([loadPairing(), loadJoined()]).toEqual([pairing, null]);
  keepJoined(true);
  forgetPairing();
  expect([loadPairing(), loadJoined()]).toEqual([null, null]);
  // Of another version of the page, or cut off.
  for (const other of ['{"token":1}', '{"tok']) {
    items.set('first-fire-pairing', other);
    expect(loadPairing()).toBeNull();
  }
});

it('a browser that refuses to keep anything takes nothing down: a device joins, and does not come back by itself', () => {
  const refuse = () => {
    throw new DOMException('The quota has been exceeded.', 'QuotaExceededError');
  };
  vi.stubGlobal('localStorage', { getItem: refuse, setItem: refuse, removeItem: refuse });
  keepPairing(pairing);
  keepJoined(true);
  expect([loadPairing(), loadJoined(), kept.read('anything')]).toEqual([null, null, null]);
  keepJoined(false);
  forgetPairing();
});
