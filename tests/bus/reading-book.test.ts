import { describe, expect, it } from 'vitest';
import { createReadingBook } from '../../src/bus/reading-book.ts';
import { createBusWatch } from '../../src/bus/watch.ts';

const value = (spn: number, number: number, timeS: number, source = 0) =>
  ({ kind: 'value', spn, name: 'x', source, timeS, value: number, unit: 'V' }) as const;
const absent = (spn: number, timeS: number) =>
  ({ kind: 'notAvailable', spn, name: 'x', source: 0, timeS, raw: 0xffff }) as const;

const AT_THE_BATTERY_OR_THE_KEY = [168, 158, 444] as const;

describe('The last readings', () => {
  it('are there until three repetitions are missed', () => {
    const book = createReadingBook();
    book.note(value(110, 80, 100));
    expect(book.read(110, 103)).toMatchObject({ kind: 'value', value: 80 });
    expect(book.read(110, 103.1)).toMatchObject({ kind: 'stale', spn: 110 });
    expect(book.read(110, Number.NaN)).toMatchObject({ kind: 'stale' });
  });

  it('of engine speed are too old after one second', () => {
    const book = createReadingBook();
    book.note(value(190, 650, 100));
    expect(book.read(190, 101).kind).toBe('value');
    expect(book.read(190, 101.01).kind).toBe('stale');
  });

  it('of what is sent only on request are kept', () => {
    const book = createReadingBook();
    book.note(value(247, 0.05, 0));
    expect(book.read(247, 3600)).toMatchObject({ kind: 'value', value: 0.05 });
  });

  it('that were never heard are told so', () => {
    expect(createReadingBook().read(100, 0)).toEqual({ kind: 'neverHeard', spn: 100 });
  });

  it('become absent when the sender says so: an older value does not stand in', () => {
    const book = createReadingBook();
    book.note(value(168, 25, 10));
    book.note(absent(168, 10.5));
    expect(book.read(168, 10.6).kind).toBe('notAvailable');
  });

  it('of several senders are kept apart; the lowest address comes first', () => {
    const book = createReadingBook();
    book.note(value(168, 24.1, 10, 33));
    book.note(value(168, 25.3, 10, 0));
    expect(book.read(168, 10)).toMatchObject({ value: 25.3 });
    expect(book.read(168, 10, 33)).toMatchObject({ value: 24.1 });
    expect(book.read(168, 10, 5).kind).toBe('neverHeard');
  });

  it('of battery voltage come from the first place that has a value', () => {
    const book = createReadingBook();
    expect(book.readFirst(AT_THE_BATTERY_OR_THE_KEY, 10)).toEqual({ kind: 'neverHeard', spn: 168 });
    book.note(absent(168, 10));
    expect(book.readFirst(AT_THE_BATTERY_OR_THE_KEY, 10)).toMatchObject({ kind: 'notAvailable', spn: 168 });
    book.note(value(158, 24.9, 10));
    expect(book.readFirst(AT_THE_BATTERY_OR_THE_KEY, 10)).toMatchObject({ spn: 158, value: 24.9 });
    book.note(value(168, 25, 11));
    expect(book.readFirst(AT_THE_BATTERY_OR_THE_KEY, 11)).toMatchObject({ spn: 168, value: 25 });
  });
});

describe('The watch over the bus', () => {
  it('tells of silence once, and once that it is over', () => {
    const watch = createBusWatch(0);
    expect(watch.check(2)).toBeUndefined();
    expect(watch.check(2.1)).toMatchObject({
      kind: 'silent',
      sentence: expect.stringContaining('key is on'),
    });
    expect(watch.check(3)).toBeUndefined();
    expect(watch.heard(4)).toMatchObject({ kind: 'heardAgain' });
    expect(watch.heard(4.1)).toBeUndefined();
    expect(watch.check(6.2)?.kind).toBe('silent');
  });
});
