import { afterEach, describe, expect, it, vi } from 'vitest';
import { type KeptStop, KeptStops } from '../../src/tablet/remote/kept-stops.ts';
import { stopsOfTab } from '../../src/tablet/remote/stops-of-tab.ts';

afterEach(() => vi.unstubAllGlobals());

/** What a tab keeps, as one with room for it does. */
function tab() {
  const items = new Map<string, string>();
  vi.stubGlobal('sessionStorage', {
    getItem: (key: string) => items.get(key) ?? null,
    setItem: (key: string, text: string) => void items.set(key, text),
    removeItem: (key: string) => void items.delete(key),
  });
  return items;
}

const stop: KeptStop = { id: 'a', deed: { do: 'stop' }, session: 's' };
const fire: KeptStop = { id: 'b', deed: { do: 'stop', via: 'voice', cause: 'smokeOrFire' }, session: null };
const early: KeptStop = { id: 'c', deed: { do: 'stop' } };
const ids = (stops: readonly KeptStop[]) => stops.map(({ id }) => id);

describe('Stops without an answer', () => {
  it('outlive the page, with their cause, until they have one', () => {
    const items = tab();
    const given = new KeptStops(stopsOfTab);
    for (const each of [stop, fire, early]) given.add(each);
    given.remove('a');
    expect(new KeptStops(stopsOfTab).all).toEqual([fire, early]);
    given.clear();
    expect([new KeptStops(stopsOfTab).all, items.size]).toEqual([[], 0]);
  });

  it('go to the session that they were given in, to any where that is not known, and to none after it', () => {
    tab();
    const given = new KeptStops(stopsOfTab);
    for (const each of [stop, fire, early]) given.add(each);
    expect(given.isDoubtful('a')).toBe(false);
    for (const [session, good, gone] of [
      ['s', ['a', 'b', 'c'], []],
      [undefined, ['a', 'b', 'c'], []],
      ['t', ['b', 'c'], ['a']],
    ] as const) {
      const later = new KeptStops(stopsOfTab);
      expect(later.isDoubtful('a')).toBe(true);
      const judged = later.judge(session);
      expect([ids(judged.good), ids(judged.gone)]).toEqual([good, gone]);
      // Once is enough: what was sent is waited for like every other.
      expect([later.isDoubtful('a'), later.judge('u')]).toEqual([false, { good: [], gone: [] }]);
    }
    expect(ids(new KeptStops(stopsOfTab).all)).toEqual(['b', 'c']);
  });

  it('that cannot be read, or be kept, take nothing down', () => {
    const items = tab();
    for (const text of ['[{"id":1}]', '[{"id"', '{}']) {
      items.set('first-fire-open-stops', text);
      expect(stopsOfTab.read()).toEqual([]);
    }
    items.set('first-fire-open-stops', JSON.stringify([{ id: 'd', deed: { do: 'takeOver' } }]));
    expect(stopsOfTab.read()).toEqual([]);
    const refuse = () => {
      throw new DOMException('The quota has been exceeded.', 'QuotaExceededError');
    };
    vi.stubGlobal('sessionStorage', { getItem: refuse, setItem: refuse, removeItem: refuse });
    const given = new KeptStops(stopsOfTab);
    given.add(stop);
    expect(given.all).toEqual([stop]);
    given.clear();
  });
});
