import { describe, expect, it } from 'vitest';
import type { Context } from '../../machines/context.ts';
import { offerOf } from '../../machines/moment.ts';
import type { StepId } from '../../prompts/types.ts';
import { ofKind } from '../../src/record/vocabulary/index.ts';
import type { Driver } from './helpers/driver.ts';
import { atStep, standingIn, upTo } from './helpers/forged.ts';
import { demoSix } from './helpers/profiles.ts';
import { knowing } from './limits/known.ts';

const keys = { via: 'keys' } as const;
const front = (known: Partial<Context> = {}) => atStep(demoSix, 'walkRound.hoses', 'together', known);
const passedIn = (driver: Driver) => driver.last.notes.filter(ofKind('passed')).map(({ data }) => data.step);
/** The group is looked for anew, as after the step before it. */
const begun = (id: StepId, known: Partial<Context> = {}) =>
  standingIn(demoSix, { procedure: 'next' }, { step: 'job.card', done: upTo(demoSix, id), ...known }).clock(
    0,
  );

describe('steps that are asked together', () => {
  it('are named in one question, and passed by one reply, each with its gate', () => {
    const asked = begun('walkRound.hoses');
    expect(asked.name).toBe('walkRound.hoses.together');
    expect(asked.last.said.at(-1)).toMatchObject({
      line: 'together',
      values: {
        items: {
          list: ['walkRound.hoses', 'walkRound.boots', 'walkRound.belts'].map(item => ({ item, values: {} })),
        },
        reply: { reply: 'frontGood' },
      },
    });
    asked.reply('frontGood', keys);
    expect(passedIn(asked)).toEqual(['walkRound.hoses', 'walkRound.boots', 'walkRound.belts']);
    expect(asked.last.notes.filter(ofKind('passed'))[0]?.data.gate).toBe('walkRoundDone');
    expect(asked.context.done).toEqual(upTo(demoSix, 'walkRound.tools'));
    expect(asked.name).toBe('walkRound.tools.asking');
  });

  it('are only those that are left: what is done is neither named nor passed once more', () => {
    const done = [...upTo(demoSix, 'walkRound.hoses'), 'walkRound.hoses'] as const;
    const two = begun('walkRound.hoses', { done });
    expect(two.name).toBe('walkRound.boots.together');
    expect(two.last.said.at(-1)?.values.items).toMatchObject({
      list: [{ item: 'walkRound.boots' }, { item: 'walkRound.belts' }],
    });
    expect(passedIn(two.reply('frontGood', keys))).toEqual(['walkRound.boots', 'walkRound.belts']);
    const one = begun('walkRound.hoses', { done: [...done, 'walkRound.boots'] });
    expect(one.name).toBe('walkRound.belts.asking');
  });

  it('are read back by voice where a gate hangs on one of them, and count at once by keys', () => {
    const bottles = () => atStep(demoSix, 'fill.coolantBled', 'together');
    const spoken = bottles().reply('bottlesGood');
    expect(spoken.name).toBe('fill.coolantBled.togetherReadBack');
    expect(passedIn(spoken)).toEqual([]);
    expect(passedIn(spoken.fork().reply('yes'))).toEqual(['fill.coolantBled', 'fill.steeringFull']);
    const denied = spoken.fork().reply('no');
    expect(denied.name).toBe('fill.coolantBled.together');
    expect(denied.context.done).toEqual(upTo(demoSix, 'fill.coolantBled'));
    expect(bottles().reply('bottlesGood', keys).context.done).toContain('fill.steeringFull');
  });

  it('have a plain "yes" stand for them only by hand, and for what is read back while that is', () => {
    const { moment } = front();
    expect(offerOf(moment)).toMatchObject({
      affirmed: { reply: 'frontGood', always: false },
      group: 'hosesBootsBelts',
      items: ['walkRound.hoses', 'walkRound.boots', 'walkRound.belts'],
      by: 'technician',
    });
    const readBack = offerOf(front().reply('frontGood').moment);
    expect(readBack).toMatchObject({
      affirmed: { reply: 'yes', always: false },
      group: 'hosesBootsBelts',
    });
  });

  it('wait as long as people like: work may be put on hold, also while they are read back', () => {
    for (const driver of [front(), front().reply('frontGood')])
      expect(driver.send({ type: 'hold' }, keys).name).toBe('held');
  });

  it('are asked one by one on wish, until the last of them', () => {
    const driver = front({ misheard: 2 }).reply('oneByOne', keys);
    expect(driver.name).toBe('walkRound.hoses.asking');
    expect(driver.context).toMatchObject({ oneByOne: 'hosesBootsBelts', misheard: 0 });
    expect(driver.reply('hosesGood', keys).name).toBe('walkRound.boots.asking');
    expect(driver.reply('bootsGood', keys).name).toBe('walkRound.belts.asking');
    expect(driver.reply('beltsGood', keys).context.oneByOne).toBeNull();
  });

  it('are passed by nothing where what is worked out for one of them has no answer', () => {
    const mix = (coldestNight: number) =>
      atStep(demoSix, 'fill.coolantMix', 'together', {
        readings: knowing(demoSix, { coldestNight }).readings,
      }).reply('mixedAndFull', keys);
    expect(mix(-58).name).toBe('fill.coolantMix.together');
    expect(mix(-58).lines).toEqual(['notPossible']);
    expect(mix(-8).context.done).toContain('fill.coolantFilled');
  });

  it('are no longer done again once they have passed, and others still are', () => {
    const again = ['walkRound.boots', 'job.card', 'walkRound.hoses'] as const;
    expect(front({ again }).reply('frontGood', keys).context.again).toEqual(['job.card']);
  });

  it('of which a number is wrong have their numbers asked for again; without numbers nothing is denied', () => {
    const read = knowing(demoSix, { coldestNight: -8 }).readings;
    const told = (['fill.fuelInTank', 'fill.biodieselShare'] as const).map(step => ({
      quantity: step === 'fill.fuelInTank' ? ('fuelInTank' as const) : ('biodieselShare' as const),
      si: 5,
      atMs: 0,
      step,
    }));
    const echoed = told.map(({ step, quantity, si }) => ({ step, quantity, si, engine: 'off' as const }));
    const fuel = () =>
      atStep(demoSix, 'fill.fuelGrade', 'together', { readings: [...read, ...told], echoed });
    const wrong = fuel().reply('no', keys);
    expect(wrong.name).toBe('fill.fuelInTank.asking');
    expect(wrong.context.readings).toEqual(read);
    expect(wrong.context.echoed).toEqual([]);
    // Read back with the fuel, they are no longer taken back.
    expect(fuel().reply('fuelAndFiltersRight', keys).context.echoed).toEqual([]);
    expect(offerOf(fuel().moment).replies).toEqual(['fuelAndFiltersRight', 'no', 'oneByOne', 'notYet']);
    expect(offerOf(front().moment).replies).toEqual(['frontGood', 'oneByOne', 'notYet']);
  });

  it('leave numbers of other steps to be taken back', () => {
    const echoed = [{ step: 'job.ambient', quantity: 'ambientTemperature', si: 5, engine: 'off' }] as const;
    expect(front({ echoed }).reply('frontGood', keys).context.echoed).toEqual(echoed);
  });
});
