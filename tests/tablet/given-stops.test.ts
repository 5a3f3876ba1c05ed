import { expect, it } from 'vitest';
import { GivenStops } from '../../src/tablet/remote/given-stops.ts';

it('of one stop is shown what becomes of it', () => {
  for (const answer of ['stopped', 'nothingRuns', 'none'] as const) {
    const stops = new GivenStops();
    expect([stops.state, stops.anyWaits, stops.anyIsAwaited]).toEqual(['none', false, false]);
    stops.give('a');
    expect([stops.state, stops.anyWaits, stops.anyIsAwaited]).toEqual(['stopping', true, true]);
    expect(stops.waits('a')).toBe(true);
    stops.answered('a', answer);
    expect([stops.state, stops.anyWaits, stops.anyIsAwaited]).toEqual([answer, false, false]);
    // Time is up for what was answered, or comes twice.
    expect(stops.isLate('a')).toBe(false);
    expect(stops.refused('a')).toBe(false);
    stops.answered('a', 'nothingRuns');
    expect(stops.state).toBe(answer);
    stops.forget();
    expect(stops.state).toBe('none');
  }
});

it('people are told once of all that wait, and again of what is given after that', () => {
  const stops = new GivenStops();
  stops.give('a');
  stops.give('b');
  expect(stops.isLate('a')).toBe(true);
  expect([stops.state, stops.anyWaits, stops.anyIsAwaited]).toEqual(['unanswered', true, true]);
  expect(stops.isLate('b')).toBe(false);
  expect([stops.isLate('a'), stops.anyIsAwaited]).toEqual([false, false]);
  stops.give('c');
  expect(stops.isLate('c')).toBe(true);
});

it('an answer hides no other stop: neither one that still waits, nor one whose time is up', () => {
  const stops = new GivenStops();
  stops.give('a');
  stops.give('b');
  stops.answered('a', 'stopped');
  expect(stops.state).toBe('stopping');
  stops.give('c');
  stops.isLate('b');
  stops.answered('c', 'none');
  stops.forget();
  expect(stops.state).toBe('unanswered');
  stops.answered('b', 'stopped');
  expect(stops.state).toBe('stopped');
});

it('one that was told of together with another is not shown as unanswered before its own time is up', () => {
  const stops = new GivenStops();
  stops.give('a');
  stops.give('b');
  stops.isLate('a');
  stops.answered('a', 'stopped');
  expect(stops.state).toBe('stopping');
});

it('one that the laptop would not have stays unanswered until a later one is answered', () => {
  const stops = new GivenStops();
  stops.give('before');
  stops.give('a');
  stops.give('b');
  expect(stops.refused('a')).toBe(true);
  expect([stops.state, stops.waits('a'), stops.waits('b')]).toEqual(['unanswered', false, true]);
  stops.answered('before', 'stopped');
  expect(stops.state).toBe('unanswered');
  stops.answered('b', 'stopped');
  expect(stops.state).toBe('stopped');
});

it('where nobody is left to answer, all of them are late', () => {
  const stops = new GivenStops();
  expect(stops.allAreLate()).toBe(false);
  stops.give('a');
  stops.give('b');
  expect(stops.allAreLate()).toBe(true);
  expect([stops.anyIsAwaited, stops.anyWaits]).toEqual([false, true]);
  expect(stops.allAreLate()).toBe(false);
});

it('one of a page before this is unanswered from the start, and people are told of it once here', () => {
  const stops = new GivenStops();
  stops.takeOver('a');
  stops.takeOver('b');
  // Nobody who leaves waits for it any more.
  expect([stops.state, stops.anyWaits, stops.anyIsAwaited]).toEqual(['unanswered', true, false]);
  expect([stops.isLate('a'), stops.isLate('b')]).toEqual([true, false]);
  stops.answered('a', 'stopped');
  expect(stops.state).toBe('unanswered');
  stops.drop('b');
  expect(stops.state).toBe('stopped');
});
