import { describe, expect, it } from 'vitest';
import { assuranceOf, type Weight } from '../../machines/assurance.ts';
import { controlsOf, offerOf } from '../../machines/moment.ts';
import { english } from '../../prompts/en/index.ts';
import { grammarOf } from '../../src/session/grammar.ts';
import { Driver } from './helpers/driver.ts';
import { demoSix } from './helpers/profiles.ts';

const weights: readonly Weight[] = ['engine', 'gate', 'limit', 'later', 'nothing'];

describe('what is read back', () => {
  it('by voice is whatever an engine, a gate or a limit hangs on', () => {
    for (const weight of ['engine', 'gate', 'limit'] as const)
      for (const answer of ['reply', 'number'] as const)
        expect(assuranceOf(answer, { weight, via: 'voice' })).toBe('readBack');
  });

  it.each(['keys', 'touch'] as const)('by %s is what may free an engine, and a number of a gate', via => {
    const readBack = (answer: 'reply' | 'number') =>
      weights.filter(weight => assuranceOf(answer, { weight, via }) === 'readBack');
    expect(readBack('reply')).toEqual(['engine']);
    expect(readBack('number')).toEqual(['engine', 'gate']);
  });

  it('is any number near a limit, however it came', () => {
    for (const weight of weights)
      for (const via of ['voice', 'keys', 'touch', 'bus'] as const)
        expect(assuranceOf('number', { weight, via, near: true })).toBe('readBack');
  });
});

describe('a number that opens no gate', () => {
  const asked = new Driver(demoSix).goodUntil('job.ambient.asking');

  it('is said again within the next question, and read back with the others before their first gate', () => {
    const driver = asked.fork().value('ambientTemperature', 5);
    expect(driver.name).toBe('job.coldestNight.asking');
    expect(driver.lines).toEqual(['echo', 'ask']);
    driver.value('coldestNight', -5).value('altitude', 300);
    expect(driver.name).toBe('job.figures.asking');
    expect(driver.fork().reply('no').name).toBe('job.ambient.asking');
    expect(driver.fork().reply('no').context.readings).toEqual([]);
    expect(driver.reply('yes').context.done).toContain('job.figures');
  });

  it('is taken back by "wrong", and what stands before it stays', () => {
    const driver = asked.fork().value('ambientTemperature', 5).value('coldestNight', -5);
    driver.send({ type: 'takeBack' });
    expect(driver.name).toBe('job.coldestNight.asking');
    expect(driver.last.notes).toContainEqual({
      kind: 'takenBack',
      data: { step: 'job.coldestNight', quantity: 'coldestNight', value: -5 },
    });
    expect(driver.context.readings.map(({ quantity }) => quantity)).toEqual(['ambientTemperature']);
    expect(driver.send({ type: 'takeBack' }).name).toBe('job.ambient.asking');
    expect(driver.send({ type: 'takeBack' }).lines).toEqual(['cannotTakeBack']);
  });

  it('is never taken back once the starter has turned the engine: what is asked then stands by itself', () => {
    const filled = new Driver(demoSix).goodUntil('fill.oilQuantity.asking');
    filled.value('oilQuantity', demoSix.oil.capacityL, { via: 'keys' });
    expect(filled.context.echoed.map(({ step }) => step)).toContain('fill.oilQuantity');
    for (const place of ['noFuelCrank.oilLevel', 'firstRun.oilLevel'] as const) {
      const driver = filled.fork().goodUntil(({ context }) => context.step === place);
      expect(driver.context.echoed).toEqual([]);
      expect(controlsOf(driver.moment)).not.toContain('takeBack');
      expect(driver.send({ type: 'takeBack' }).lines).toEqual(['cannotTakeBack']);
      expect(driver.context.step).toBe(place);
    }
  });

  it('is never taken back when the engine has come to do something else', () => {
    const running = new Driver(demoSix).goodUntil('checks.leaks.item1');
    const before = running.context.done;
    const echoed = { step: 'job.ambient', quantity: 'ambientTemperature', si: 5, engine: 'off' } as const;
    running.moment = running.machine.resolveState({
      value: running.moment.value,
      context: { ...running.context, echoed: [echoed] },
    });
    expect(running.send({ type: 'takeBack' }).context.done).toEqual(before);
  });
});

describe('what is asked together', () => {
  const front = () => new Driver(demoSix).goodUntil('walkRound.hoses.together');
  const members = ['walkRound.hoses', 'walkRound.boots', 'walkRound.belts'];

  it('passes each of its steps, by voice only behind the read-back', () => {
    const spoken = front().reply('frontGood');
    expect(spoken.name).toBe('walkRound.hoses.togetherReadBack');
    expect(spoken.context.done).not.toContain('walkRound.hoses');
    expect(spoken.reply('yes').context.done).toEqual(expect.arrayContaining(members));
    const typed = front().reply('frontGood', { via: 'keys' });
    expect(typed.context.done).toEqual(expect.arrayContaining(members));
    expect(typed.last.notes.map(({ data }) => 'step' in data && data.step)).toEqual(members);
  });

  it('is answered by a phrase that no other state takes', () => {
    const states = new Map<string, Set<string>>();
    const driver = new Driver(demoSix);
    while (!driver.over) {
      const { items, replies } = offerOf(driver.moment);
      const [phrase] = replies;
      if (items && phrase) states.set(phrase, (states.get(phrase) ?? new Set()).add(driver.name));
      driver.good();
    }
    expect(states.size).toBeGreaterThan(6);
    for (const [phrase, asking] of states) expect(asking.size, phrase).toBe(1);
  });

  it('comes one by one on wish', () => {
    const driver = front().reply('oneByOne');
    expect(driver.name).toBe('walkRound.hoses.asking');
    expect(driver.reply('hosesGood', { via: 'keys' }).name).toBe('walkRound.boots.asking');
  });

  it('is never people, cut-off, fuelling, cap, clear or leaks, and never more than four', () => {
    const driver = new Driver(demoSix);
    while (!driver.over) {
      const { items } = offerOf(driver.moment);
      if (items) {
        expect(items.length).toBeLessThanOrEqual(4);
        const { step } = driver.context;
        expect(step).not.toMatch(/^job\.|^noFuelCrank\.|[lL]ook$|cool$/);
        for (const item of items) expect(item).not.toMatch(/[lL]eak|Joints$/);
      }
      driver.good();
    }
  });
});

describe('a plain "yes"', () => {
  const wordings = (driver: Driver, via: 'voice' | 'keys') =>
    grammarOf(driver.moment, english, 'us', via).replies.flatMap(({ wordings: all }) => all);

  it('stands for what is asked by keys; by voice only where nothing hangs on it', () => {
    const gate = new Driver(demoSix).goodUntil('job.protection.asking');
    const plain = new Driver(demoSix).goodUntil('job.makerFirst.asking');
    for (const word of ['yes', 'okay', 'done', 'good']) {
      expect(wordings(gate, 'keys')).toContain(word);
      expect(wordings(gate, 'voice')).not.toContain(word);
      expect(wordings(plain, 'voice')).toContain(word);
    }
  });

  it('signs nothing and turns no starter', () => {
    for (const name of ['signOff.sign.asking', 'noFuelCrank.untilPressure.ready'])
      expect(wordings(new Driver(demoSix).goodUntil(name), 'keys')).not.toContain('yes');
  });
});

describe('a lowest voltage that nobody measured', () => {
  it('costs one more short burst', () => {
    const driver = new Driver(demoSix).goodUntil('noFuelCrank.voltage.asking');
    driver.reply('notMeasured', { by: 'second' });
    expect(driver.context.done).not.toContain('noFuelCrank.holds');
    expect(driver.name).toMatch(/^noFuelCrank\.holds\./);
    expect(driver.lines).toContain('notMeasuredPrice');
  });
});

describe('a reason', () => {
  it.each(['no', '120', 'yes', 'ok', ' - '])('is not "%s"', text => {
    const driver = new Driver(demoSix).goodUntil('prime.strokes.asking').send({ type: 'skip' });
    const { name } = driver;
    expect(driver.send({ type: 'reason', text }, { via: 'keys' }).name).toBe(name);
    expect(driver.lines).toEqual(['noReason']);
  });
});
