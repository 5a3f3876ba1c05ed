import { describe, expect, it } from 'vitest';
import { offerOf } from '../../machines/moment.ts';
import { languageCodes, languages } from '../../prompts/index.ts';
import { wordSaid } from '../../src/session/wording.ts';
import { Driver } from './helpers/driver.ts';
import { changed, demoGenset, demoSix } from './helpers/profiles.ts';
import { isDone, sessionAt } from './limits/sessions.ts';

const LOAD = 'noFuelCrank.batteryLoad';
const REST = 'noFuelCrank.batteryRest';

const asked = (shown = {}) => sessionAt(demoSix, `${LOAD}.asking`, shown);
const withoutTester = (shown = {}) => asked(shown).reply('noTester', { via: 'keys' });
/** A charged battery at rest, as nobody doubts it. */
const rested = (driver: Driver) => driver.value('batteryVoltage', 12.6).reply('yes');

describe('the battery under load', () => {
  it.each([
    ['en', /load tester, half the cold-cranking amps, fifteen seconds.*no tester/i],
    ['fr', /testeur de charge, moitié du courant de démarrage à froid, quinze secondes.*pas de testeur/i],
    ['es', /probador de carga, la mitad de la corriente de arranque en frío, quince segundos.*sin probador/i],
  ] as const)(
    'asks for half the cold-cranking current for as long as its limit is for, or no tester (%s)',
    (code, ask) => {
      const { lastSaid } = asked().context;
      expect(lastSaid && wordSaid(lastSaid, languages[code], 'metric').spoken).toMatch(ask);
    },
  );

  it('with a tester nothing else is asked for', () => {
    const driver = asked().value('crankingVoltage', 10.4).reply('yes');
    expect(isDone(driver, LOAD)).toBe(true);
    expect(driver.context.step).toBe('noFuelCrank.untilPressure');
  });

  it('of 12.3 V is questioned as what no tester shows, not as what no starter leaves', () => {
    const driver = asked().value('crankingVoltage', 12.3);
    expect(driver.name).toBe(`${LOAD}.asking`);
    const said = driver.last.said.find(({ line }) => line === 'doubted');
    expect(said?.values.why).toEqual({ line: 'whyTesterDraws', values: {} });
    const starter = sessionAt(demoSix, 'noFuelCrank.voltage.asking').value('crankingVoltage', 12.3);
    expect(starter.last.said.find(({ line }) => line === 'doubted')?.values.why).toEqual({
      line: 'whyStarterDraws',
      values: {},
    });
  });
});

describe('without a tester', () => {
  it('is said by voice, read back, and leads to the voltage at rest', () => {
    const driver = asked().reply('noTester', { via: 'voice' });
    expect(driver.name).toBe(`${LOAD}.withoutReadBack`);
    expect(driver.last.said).toMatchObject([
      { line: 'readBackReply', values: { reply: { reply: 'noTester' } } },
    ]);
    expect(driver.fork().reply('no').name).toBe(`${LOAD}.asking`);
    expect(driver.reply('yes').name).toBe(`${REST}.asking`);
    expect(offerOf(driver.moment).quantity).toBe('batteryVoltage');
  });

  it.each(['keys', 'touch'] as const)('counts at once by %s', via => {
    expect(asked().reply('noTester', { via }).name).toBe(`${REST}.asking`);
  });

  it('is not believed of a voice that was misunderstood three times', () => {
    const driver = asked();
    for (let nth = 0; nth < 3; nth += 1) driver.send({ type: 'unclear' });
    expect(driver.reply('noTester', { by: 'technician', via: 'voice' }).name).toBe(`${LOAD}.asking`);
  });

  it('turns no starter before the voltage at rest was read back, and no starter on less than its limit', () => {
    const driver = withoutTester();
    expect(driver.context.done).not.toContain(REST);
    expect(driver.fork().value('batteryVoltage', 12.3).reply('yes').name).toBe(`${REST}.asking`);
    expect(rested(driver).context.step).toBe('noFuelCrank.untilPressure');
  });

  it('is refused by its gate where the voltage at rest is lacking', () => {
    const driver = rested(withoutTester()).goodUntil('noFuelCrank.untilPressure.ready');
    const lacking = driver.fork();
    lacking.moment = lacking.machine.resolveState({
      value: lacking.moment.value,
      context: { ...lacking.context, done: lacking.context.done.filter(id => id !== REST) },
    });
    expect(lacking.reply('ready').name).toBe('noFuelCrank.untilPressure.refused');
    expect(driver.reply('ready').name).toBe('noFuelCrank.untilPressure.cranking');
  });

  it('the starter is the load: below its floor while it cranks, fuel is never restored', () => {
    const driver = rested(withoutTester()).goodUntil('noFuelCrank.voltage.asking');
    // 9.31 V at 5 degC, by the table: 9.3 at 4, 9.4 at 10.
    driver.value('crankingVoltage', 9.2, { by: 'second' }).reply('yes', { by: 'second' });
    expect(driver.name).toBe('noFuelCrank.voltage.asking');
    expect(driver.context.done).not.toContain('noFuelCrank.voltage');
    driver.value('crankingVoltage', 9.4, { by: 'second' }).reply('yes', { by: 'second' });
    expect(driver.context.done).toContain('noFuelCrank.voltage');
    expect(driver.goodToTheEnd().name).toBe('signedOff');
  });

  it('is no way round a battery that the tester has shown to be weak', () => {
    const driver = asked().value('crankingVoltage', 8.9).reply('yes');
    expect(driver.name).toBe(`${LOAD}.asking`);
    driver.reply('noTester', { via: 'keys' });
    expect(driver.name).toBe(`${LOAD}.asking`);
    expect(driver.last.said).toMatchObject([{ line: 'testedAlready' }]);
    expect(driver.value('crankingVoltage', 10).reply('yes').context.step).toBe('noFuelCrank.untilPressure');
  });

  it('counts for that once: after a stop or going back it is asked for again, and a tester does', () => {
    const back = withoutTester().send({ type: 'goBack' });
    expect(back.name).toBe(`${LOAD}.asking`);
    expect(back.value('crankingVoltage', 10).reply('yes').context.step).toBe('noFuelCrank.untilPressure');
    const driver = rested(withoutTester()).goodUntil('noFuelCrank.holds.askingClear').stop();
    driver.reply('allOff').reply('yes').reply('causeFalseAlarm').reply('yes').reply('ready').reply('yes');
    driver.goodUntil(`${LOAD}.asking`).value('crankingVoltage', 10).reply('yes');
    expect(driver.context.step).toBe('noFuelCrank.untilPressure');
    expect(driver.context.done).not.toContain(REST);
  });

  it('of a battery that showed more while it cranked than at rest, the reading at rest is questioned', () => {
    const cranked = rested(withoutTester()).goodUntil('noFuelCrank.restored.asking').stop();
    cranked.reply('allOff').reply('yes').reply('causeOther').reply('yes').reply('ready').reply('yes');
    cranked.goodUntil(`${LOAD}.asking`).reply('noTester', { via: 'keys' });
    expect(cranked.value('batteryVoltage', 9).lines).toContain('doubted');
  });

  it('two batteries in series have twice the limit', () => {
    const of24V = changed(demoGenset, { systemVoltage: 24 });
    const driver = sessionAt(of24V, `${LOAD}.asking`).reply('noTester', { via: 'keys' });
    expect(driver.fork().value('batteryVoltage', 24.7).reply('yes').name).toBe(`${REST}.asking`);
    expect(isDone(driver.value('batteryVoltage', 25).reply('yes'), REST)).toBe(true);
  });

  it('leads a whole start to its end', () => {
    const driver = new Driver(demoSix).goodUntil(`${LOAD}.asking`).reply('noTester').reply('yes');
    expect(driver.goodToTheEnd().name).toBe('signedOff');
    expect(driver.context.done).toEqual(expect.arrayContaining([LOAD, REST]));
  });
});

it('can be said in every language in which anybody is heard, and typed in every other', () => {
  for (const code of languageCodes) expect(languages[code].replies.noTester.length).toBeGreaterThan(0);
});
