import { describe, expect, it } from 'vitest';
import { offerOf } from '../../machines/moment.ts';
import { english } from '../../prompts/en/index.ts';
import { grammarOf } from '../../src/session/grammar.ts';
import { meaningOf } from '../../src/session/hearing.ts';
import { createMatcher } from '../../src/voice/meaning.ts';
import { Driver } from './helpers/driver.ts';
import { goodValue } from './helpers/good.ts';
import { demoSix } from './helpers/profiles.ts';

/** Every moment of an all-good start at which a number has just been read back. */
const readBacks = (() => {
  const moments: Driver[] = [];
  const driver = new Driver(demoSix);
  while (!driver.over) {
    if (offerOf(driver.moment).corrects) moments.push(driver.fork());
    driver.good();
  }
  return moments;
})();

const pendingOf = ({ context: { pending } }: Driver) => {
  if (pending?.kind !== 'value') throw new Error('Nothing is read back.');
  return pending;
};

describe('Two readings that contradict one another', () => {
  it('leave neither standing, whatever is read: the step asks again', () => {
    expect(readBacks.length).toBeGreaterThan(8);
    for (const moment of readBacks) {
      const { quantity, si } = pendingOf(moment);
      const other = moment.fork().value(quantity, si + 1);
      expect(other.name).not.toBe(moment.name);
      expect(offerOf(other.moment).quantity).toBeDefined();
      expect(other.context).toMatchObject({ pending: null, misheard: moment.context.misheard + 1 });
      expect(other.context.done).toEqual(moment.context.done);
      expect(other.context.readings).toEqual(moment.context.readings);
      expect(other.lines[0]).toBe('readingsDiffer');
      expect(other.last.notes).toContainEqual({
        kind: 'contradiction',
        data: { step: moment.context.step, quantity, before: si, now: si + 1 },
      });
    }
  });

  it('are not settled by a "correct" that comes after them', () => {
    for (const moment of readBacks) {
      const { quantity, si } = pendingOf(moment);
      const yes = moment
        .fork()
        .value(quantity, si + 1)
        .reply('yes');
      expect(yes.context.done).toEqual(moment.context.done);
      expect(yes.context.readings).toEqual(moment.context.readings);
    }
  });

  it('are settled by a third one with a read-back of its own', () => {
    const driver = new Driver(demoSix).goodUntil('fill.oilQuantity.asking');
    const good = goodValue('oilQuantity', driver.moment);
    driver.value('oilQuantity', 12).value('oilQuantity', good);
    expect(driver.name).toBe('fill.oilQuantity.asking');
    driver.value('oilQuantity', good);
    expect(driver.name).toBe('fill.oilQuantity.readingBack');
    expect(driver.reply('yes').context.done).toContain('fill.oilQuantity');
  });

  it('count as misunderstood: after the second one digit by digit, after the third only the second person or the keys', () => {
    const driver = new Driver(demoSix).goodUntil('fill.oilQuantity.asking');
    for (const misheard of [1, 2, 3]) {
      driver.value('oilQuantity', 12, { via: 'keys' }).value('oilQuantity', 13, { via: 'keys' });
      expect(driver.context.misheard).toBe(misheard);
    }
    expect(driver.last.said.at(-1)).toMatchObject({ prefix: 'unclearThrice' });
    driver.value('oilQuantity', 15, { by: 'technician', via: 'voice' });
    expect(driver.name).toBe('fill.oilQuantity.asking');
  });

  it('end the time in which a bad value has to be denied, like "wrong" does', () => {
    const driver = new Driver(demoSix).goodUntil('checks.oilPressure.asking').value('oilPressure', 20);
    expect(driver.context.deadline).not.toBeNull();
    driver.value('oilPressure', goodValue('oilPressure', driver.moment));
    expect(driver.name).toBe('checks.oilPressure.asking');
    expect(driver.context.deadline).toBeNull();
  });
});

describe('While a number is read back', () => {
  it('the same one confirms nothing: it is read back once more', () => {
    for (const moment of readBacks) {
      const { quantity, si } = pendingOf(moment);
      const same = moment.fork().value(quantity, si);
      expect(same.name).toBe(moment.name);
      expect(same.context.misheard).toBe(moment.context.misheard);
      expect(same.last.said).toHaveLength(1);
    }
  });

  it('neither the bus nor another gauge contradicts it', () => {
    for (const moment of readBacks) {
      const { quantity, si } = pendingOf(moment);
      expect(moment.fork().value(quantity, si + 1, { via: 'bus' }).name).toBe(moment.name);
      const foreign = quantity === 'altitude' ? 'oilPressure' : 'altitude';
      expect(moment.fork().value(foreign, 1).name).toBe(moment.name);
    }
  });

  it('another one is in the grammar, and is heard as a number', () => {
    for (const { moment } of readBacks) {
      const grammar = grammarOf(moment, english, 'us', 'voice');
      const { corrects } = offerOf(moment);
      expect(grammar.number?.id).toBe(corrects);
      const value = grammar.number?.min ?? Number.NaN;
      const heard = { kind: 'number', id: String(corrects), value, text: '', confidence: 1 } as const;
      const { body } = meaningOf(heard, moment, 'voice', { language: english, units: 'us' });
      expect(body).toMatchObject({ type: 'value', quantity: corrects });
    }
  });

  it('"four two", then "five two", are two readings', () => {
    const driver = new Driver(demoSix).goodUntil('checks.oilPressure.asking');
    const say = (text: string) => {
      const meaning = createMatcher(grammarOf(driver.moment, english, 'us', 'voice')).meaningOf(text);
      if (meaning === undefined || meaning.kind === 'stop') throw new Error(`"${text}" is no answer now.`);
      const heard = { ...meaning, text, confidence: 1 };
      const { body, by } = meaningOf(heard, driver.moment, 'voice', { language: english, units: 'us' });
      if (body) driver.send(body, { by });
    };
    say('oil pressure four two');
    expect(driver.name).toBe('checks.oilPressure.readingBack');
    say('five two');
    expect(driver.name).toBe('checks.oilPressure.asking');
    expect(driver.lines[0]).toBe('readingsDiffer');
    say('five two');
    say('correct');
    expect(driver.context.readings.at(-1)?.quantity).toBe('oilPressure');
    expect(driver.context.readings.filter(({ step }) => step === 'checks.oilPressure')).toHaveLength(1);
  });
});
