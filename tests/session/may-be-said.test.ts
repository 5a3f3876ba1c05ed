import { describe, expect, it } from 'vitest';
import { controlsOf, offerOf } from '../../machines/moment.ts';
import type { Via } from '../../machines/vocabulary.ts';
import { languages } from '../../prompts/index.ts';
import { grammarOf, isControl, isReplyId, secondOnly, slotValueToSi } from '../../src/session/grammar.ts';
import type { UnitSystem } from '../../src/session/units.ts';
import type { Driver } from '../machines/helpers/driver.ts';
import { demoSix } from '../machines/helpers/profiles.ts';
import { sessionAt } from '../machines/limits/sessions.ts';

const { en } = languages;

const misheard = (driver: Driver, times: number) => {
  const copy = driver.fork([]);
  copy.moment = copy.machine.resolveState({
    value: copy.moment.value,
    context: { ...copy.moment.context, misheard: times },
  });
  return copy;
};
const grammar = (at: string | Driver, via: Via = 'voice', units: UnitSystem = 'us') =>
  grammarOf((typeof at === 'string' ? sessionAt(demoSix, at) : at).moment, en, units, via);
const wordings = (at: string | Driver, id: string, via: Via = 'voice') =>
  grammar(at, via).replies.find(reply => reply.id === id)?.wordings ?? [];

describe('what may be said', () => {
  it('is the replies that are offered and the words that do something here, and always the stop', () => {
    const { moment } = sessionAt(demoSix, 'job.protection.asking');
    const { key, language, stop, replies, number } = grammarOf(moment, en, 'us', 'voice');
    expect([key, language, stop]).toEqual(['job.protection.asking', 'en', en.stopWordings]);
    expect(replies.map(({ id }) => id)).toEqual([...offerOf(moment).replies, ...controlsOf(moment)]);
    expect(number).toBeUndefined();
  });

  it('by voice is the wordings of a reply; by keys a plain "yes" or "done" as well, where no other reply takes it', () => {
    const own = en.replies.protectionOn as readonly string[];
    expect(wordings('job.protection.asking', 'protectionOn')).toEqual(own);
    expect(wordings('job.protection.asking', 'protectionOn', 'keys')).toEqual([...own, ...en.affirmatives]);
    // Nothing hangs on this one.
    expect(wordings('job.makerFirst.asking', 'understood')).toEqual([
      ...(en.replies.understood as readonly string[]),
      ...en.affirmatives.filter(each => !(en.replies.understood as readonly string[]).includes(each)),
    ]);
  });

  it('of control words are by voice the spoken ones, and by keys also what would be misheard', () => {
    const spoken = en.controls.skip as readonly string[];
    expect(wordings('prime.strokes.asking', 'skip')).toEqual(spoken);
    expect(wordings('prime.strokes.asking', 'skip', 'touch')).toEqual([...spoken, ...en.typedControls.skip]);
    expect(wordings('prime.strokes.asking', 'hold', 'keys')).toEqual(en.controls.hold);
  });
});

describe('after three misunderstandings', () => {
  const asking = sessionAt(demoSix, 'job.ambient.asking');

  it('by voice everything is said by the second person, who says so first; control words and keys stay as they are', () => {
    const confirming = sessionAt(demoSix, 'job.protection.asking');
    const own = en.replies.protectionOn as readonly string[];
    expect(wordings(misheard(confirming, 2), 'protectionOn')).toEqual(own);
    expect(wordings(misheard(confirming, 3), 'protectionOn')).toEqual(own.map(each => `second ${each}`));
    expect(wordings(misheard(confirming, 3), 'protectionOn', 'keys')).toContain(own[0]);
    expect(wordings(misheard(confirming, 3), 'help')).toEqual(en.controls.help);
    expect([2, 3].map(times => secondOnly(misheard(confirming, times).moment))).toEqual([false, true]);
  });

  it('by voice a number needs "second" before it', () => {
    const { number } = grammar(misheard(asking, 3));
    const { leads } = en.quantities.ambientTemperature;
    expect(number?.leads).toEqual(['second', ...leads.map(lead => `second ${lead}`)]);
    expect(number?.leadNeeded).toBe(true);
    for (const plain of [grammar(misheard(asking, 2)), grammar(misheard(asking, 3), 'keys')]) {
      expect(plain.number?.leads).toEqual(leads);
      expect(plain.number?.leadNeeded).toBeUndefined();
    }
  });
});

describe('a number', () => {
  const number = (at: string, via: Via = 'voice', units: UnitSystem = 'us') => {
    const slot = grammar(at, via, units).number;
    return slot && [slot.id, slot.min, slot.max, slot.step];
  };

  it('is listened for in the user’s unit, by the finest step that is worth it, within what can be shown here', () => {
    expect(number('job.ambient.asking')).toEqual(['ambientTemperature', -40, 122, 1]);
    expect(number('job.ambient.asking', 'voice', 'metric')).toEqual(['ambientTemperature', -40, 50, 1]);
    // Half as much again as 15 L; 22.5 L are 23.77 US quarts.
    expect(number('fill.oilQuantity.asking', 'voice', 'metric')).toEqual(['oilQuantity', 0, 22.5, 0.1]);
    expect(number('fill.oilQuantity.asking')).toEqual(['oilQuantity', 0, 23.7, 0.1]);
    expect(number('fill.fuelInTank.asking', 'voice', 'metric')).toEqual(['fuelInTank', 0, 180, 1]);
    expect(number('checks.idle.item1')).toEqual(['engineSpeed', 0, 4000, 10]);
  });

  it('of a height is said in hundreds, up to four digits; typed it may be any that there is', () => {
    expect(number('job.altitude.asking')).toEqual(['altitude', 0, 9900, 100]);
    expect(number('job.altitude.asking', 'voice', 'metric')).toEqual(['altitude', 0, 3000, 100]);
    for (const via of ['keys', 'touch'] as const)
      expect(number('job.altitude.asking', via, 'metric')).toEqual(['altitude', -500, 6000, 100]);
    expect(number('job.altitude.asking', 'keys')).toEqual(['altitude', -1600, 19_600, 100]);
  });

  it('typed may lie anywhere in what can be read at all: what is far out of order is there to be judged', () => {
    expect(number('checks.idle.item1', 'keys')).toEqual(['engineSpeed', 0, 6000, 10]);
    expect(number('checks.coolant.asking', 'touch', 'metric')).toEqual(['coolantTemperature', -60, 150, 1]);
    expect(number('checks.coolant.asking', 'keys')).toEqual(['coolantTemperature', -76, 302, 1]);
    expect(number('checks.charging.asking', 'keys')?.slice(1, 3)).toEqual([0, 40]);
    // In words it reaches as far as what is listened for.
    expect(grammar('checks.idle.item1', 'keys').number?.inWords).toEqual({ min: 0, max: 4000 });
    expect(grammar('checks.idle.item1').number).not.toHaveProperty('inWords');
    // Beyond those that are listened for a number names no parameter.
    const code = sessionAt(demoSix, 'keyOn.faults.asking').reply('readACode');
    expect(grammar(code, 'keys').number).toMatchObject({ min: 1, max: 524_286 });
  });

  it('is said with its name and its unit, in the language of the session', () => {
    const { number: slot } = grammar('job.ambient.asking');
    expect(slot).toMatchObject({
      leads: en.quantities.ambientTemperature.leads,
      units: en.units.degF.said,
      writtenUnits: [en.units.degF.short],
      language: 'en',
    });
  });

  it('is said digit by digit once it was misunderstood twice, and where it is a code', () => {
    const asking = sessionAt(demoSix, 'job.ambient.asking');
    const digits = (driver: Driver) => grammar(driver).number?.digitsOnly;
    expect([0, 1, 2].map(times => digits(misheard(asking, times)))).toEqual([false, false, true]);
    expect(digits(sessionAt(demoSix, 'keyOn.faults.asking').reply('readACode'))).toBe(true);
  });

  it('may be put right where it is read back', () => {
    const readBack = sessionAt(demoSix, 'checks.coolant.asking').value('coolantTemperature', 20);
    expect(readBack.name).toBe('checks.coolant.readingBack');
    expect(grammar(readBack).number?.id).toBe('coolantTemperature');
  });

  it('comes back in SI', () => {
    expect(slotValueToSi('ambientTemperature', 212, 'us')).toBeCloseTo(100, 9);
    expect(slotValueToSi('ambientTemperature', 100, 'metric')).toBe(100);
  });
});

describe('a word', () => {
  it('is a control or a reply of the language, or neither', () => {
    expect([isControl(en, 'hold'), isReplyId(en, 'hold')]).toEqual([true, false]);
    expect([isControl(en, 'yes'), isReplyId(en, 'yes')]).toEqual([false, true]);
    expect([isControl(en, 'banana'), isReplyId(en, 'banana')]).toEqual([false, false]);
  });
});
