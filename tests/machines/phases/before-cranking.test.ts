import { describe, expect, it } from 'vitest';
import { asksOf, idsOf, met, stepOf } from '../helpers/asks.ts';
import { changed, demoBoat, demoFour, demoGenset, demoSix } from '../helpers/profiles.ts';
import { knowing } from '../limits/known.ts';

describe('priming', () => {
  it('by hand is counted in strokes until the primer is firm and screwed home, and looked at by the second person', () => {
    const primer = { gate: 'fuelPrimed', together: { group: 'primer', ok: 'primerDone' } };
    expect(asksOf(demoSix, 'prime')).toStrictEqual([
      { id: 'prime.strokes', quantity: 'primerStrokes', outside: 'again' },
      { id: 'prime.firm', ok: 'primerFirm', ...primer },
      { id: 'prime.screwedHome', ok: 'screwedHome', ...primer },
      { id: 'prime.noWeeps', ok: 'noWeeps', gate: 'fuelPrimed', by: 'second' },
    ]);
  });

  it('takes at least one stroke and no more than the profile allows', () => {
    const { judge } = stepOf(demoSix, 'prime.strokes', 'reading');
    const { maxStrokes } = demoSix.fuel.primer;
    const context = knowing(demoSix, {});
    expect(met(judge, context, 1, maxStrokes, 0, maxStrokes + 1)).toEqual([true, true, false, false]);
    expect(judge(context, 1)).toMatchObject({ value: { unit: 'count' } });
  });

  it('by a pump of its own runs for the time of the profile, until no more air comes', () => {
    expect(asksOf(demoGenset, 'prime')).toStrictEqual([
      { id: 'prime.electric' },
      { id: 'prime.electricBled', ok: 'noMoreAir', gate: 'fuelPrimed' },
      { id: 'prime.noWeeps', ok: 'noWeeps', gate: 'fuelPrimed', by: 'second' },
    ]);
    const seconds = stepOf(demoGenset, 'prime.electric', 'hold').seconds(knowing(demoGenset, {}));
    expect(seconds).toBe(demoGenset.fuel.primer.runS);
  });
});

describe('the walk round', () => {
  const front = { gate: 'walkRoundDone', together: { group: 'hosesBootsBelts', ok: 'frontGood' } };
  const wiring = { gate: 'walkRoundDone', together: { group: 'wiringFasteners', ok: 'wiringAndFasteners' } };

  it('goes through the sensors of the profile by name, then what is loose, left or unmarked', () => {
    expect(asksOf(demoSix, 'walkRound')).toStrictEqual([
      {
        id: 'walkRound.sensors',
        groups: ['firstSensors', 'secondSensors', 'thirdSensors', 'fourthSensors'],
        items: demoSix.sensors,
        ok: 'pluggedIn',
        gate: 'sensorsConnected',
      },
      { id: 'walkRound.hoses', ok: 'hosesGood', ...front },
      { id: 'walkRound.boots', ok: 'bootsGood', ...front },
      { id: 'walkRound.belts', ok: 'beltsGood', ...front },
      { id: 'walkRound.tools', ok: 'toolsOut', gate: 'walkRoundDone' },
      { id: 'walkRound.wiring', ok: 'wiringGood', ...wiring },
      { id: 'walkRound.fasteners', ok: 'fastenersMarked', ...wiring },
    ]);
  });

  it('shuts the raw water of a wet exhaust, by the name of its cock, and looks into the strainer', () => {
    const wet = asksOf(demoBoat, 'walkRound').slice(-2);
    expect(wet).toStrictEqual([
      { id: 'walkRound.rawWater', ok: 'valveClosed', gate: 'walkRoundDone' },
      { id: 'walkRound.strainer', ok: 'strainerClean', gate: 'walkRoundDone' },
    ]);
    expect(stepOf(demoBoat, 'walkRound.rawWater', 'confirm').values?.(knowing(demoBoat, {}))).toEqual({
      at: 'raw water cock',
    });
  });
});

describe('turning it by hand', () => {
  it('begins with the starter isolated and ends with the tool out; what binds stops the start', () => {
    const fed = { gate: 'turnsFreely', together: { group: 'oilFeeds', ok: 'oilFed' } };
    expect(asksOf(demoSix, 'barOver')).toStrictEqual([
      {
        id: 'barOver.isolated',
        ok: 'starterIsolated',
        gate: 'turnsFreely',
        words: { off: { line: 'keyInPocket', values: {} } },
      },
      { id: 'barOver.prelube', ok: 'prelubeDone', ...fed },
      { id: 'barOver.turboFeed', ok: 'turboFed', ...fed },
      {
        id: 'barOver.turned',
        ok: 'turnsFree',
        gate: 'turnsFreely',
        trouble: { reply: 'itBinds', cause: 'binds', named: true },
      },
      { id: 'barOver.toolOut', ok: 'barringToolOut', gate: 'turnsFreely' },
    ]);
  });

  it('has the control of what is no vehicle tagged', () => {
    expect(stepOf(demoGenset, 'barOver.isolated', 'confirm').words).toEqual({
      off: { line: 'controlTagged', values: {} },
    });
  });

  it('feeds oil where there is a port, by its name, and to a turbocharger where there is one', () => {
    const bare = changed(demoSix, { prelube: null, turbo: false });
    expect(idsOf(bare, 'barOver')).toEqual(['barOver.isolated', 'barOver.turned', 'barOver.toolOut']);
    const withPort = changed(demoFour, { prelube: { port: 'plug on the gallery' }, turbo: false });
    expect(idsOf(withPort, 'barOver')).toContain('barOver.prelube');
    expect(idsOf(withPort, 'barOver')).not.toContain('barOver.turboFeed');
    expect(stepOf(withPort, 'barOver.prelube', 'confirm').values?.(knowing(withPort, {}))).toEqual({
      port: 'plug on the gallery',
    });
    expect(idsOf(changed(demoSix, { prelube: null, turbo: true }), 'barOver')).toContain('barOver.turboFeed');
  });
});
