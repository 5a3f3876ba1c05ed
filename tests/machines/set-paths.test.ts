import { describe, expect, it } from 'vitest';
import { isOver, stateName } from '../../machines/moment.ts';
import { explore, type Place } from './helpers/explore.ts';
import { breaches, deadEnds } from './helpers/paths.ts';
import { shortestSet } from './helpers/profiles.ts';

/**
 * All paths of a generating set on which nobody says anything wrong, with one stop in each of these places: before its
 * mode switch was put to manual, between cranks, beside it as it runs, and after what was locked out was given back.
 */
const stopPlaces = [
  'noFuelCrank.batteryRest.',
  'noFuelCrank.holds.',
  'firstFire.eyes.',
  'signOff.retorque.',
  'signOff.sign.',
];
const returnsTo = (place: Place) =>
  place.returns === 0 && stopPlaces.some(id => stateName(place.moment).startsWith(id));

const graph = explore(shortestSet, {
  returns: 1,
  stopAt: returnsTo,
  causes: id => id === 'causeFalseAlarm' || id === 'causeCoolantLeak',
  codes: [],
  everything: () => false,
});
const names = new Set([...graph.places.values()].map(({ moment }) => stateName(moment)));

describe('on all paths of a generating set', () => {
  it('its steps are gone through, with a tester and without, and it may fire where it should not', () => {
    for (const name of [
      'fill.jacketHeater.asking',
      'noFuelCrank.batteryLoad.asking',
      'noFuelCrank.batteryRest.asking',
      'noFuelCrank.manual.asking',
      'signOff.handBack.asking',
      'signedOff',
    ])
      expect(names).toContain(name);
    const fired = [...graph.places.values()].filter(
      ({ moment }) => moment.context.stop?.cause === 'firedUnfuelled',
    );
    expect(fired.length).toBeGreaterThan(5);
  });

  it('no starter turns with its automatic start free or its mode switch off, and nobody signs before all is given back', () => {
    expect(breaches(graph, shortestSet)).toEqual([]);
  });

  it('no state is a dead end', () => {
    expect(deadEnds(graph, place => isOver(place.moment) || place.returns > 1)).toEqual([]);
  });
});
