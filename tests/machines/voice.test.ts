import { describe, expect, it } from 'vitest';
import { offerOf } from '../../machines/moment.ts';
import type { VoiceSight } from '../../src/record/vocabulary/event.ts';
import type { EventBody } from '../../src/session/hearing.ts';
import { Driver } from './helpers/driver.ts';
import { goodBody } from './helpers/good.ts';
import { demoBoat, demoFour, demoGenset, demoSix } from './helpers/profiles.ts';

const inVoice = (body: EventBody, of: VoiceSight['of']): EventBody =>
  body.type === 'reply' || body.type === 'value' ? { ...body, voice: { of, certainty: 0.99 } } : body;

const six = new Driver(demoSix);
const clear = six.goodUntil('noFuelCrank.untilPressure.askingClear').fork();
const leaks = six.goodUntil('checks.leaks.item1').fork();

describe('what only the second person can vouch for', () => {
  it.each([demoSix, demoFour, demoGenset, demoBoat])(
    "is refused in the technician's voice, at each place of a good start ($name), and taken in any other",
    profile => {
      const driver = new Driver(profile);
      const refused: string[] = [];
      while (!driver.over) {
        const body = goodBody(driver.moment);
        const { by } = offerOf(driver.moment);
        if (by === 'second' && body && (body.type === 'reply' || body.type === 'value')) {
          const before = driver.name;
          const other = driver.fork([]).send(inVoice(body, 'technician'));
          expect(other.name).toBe(before);
          expect(other.lines).toEqual(['otherVoice']);
          expect(other.context.done).toEqual(driver.context.done);
          for (const of of ['second', 'neither'] as const)
            expect(driver.fork([]).send(inVoice(body, of)).name).toBe(driver.fork([]).send(body).name);
          refused.push(before);
        }
        driver.good();
      }
      expect(refused.length).toBeGreaterThan(10);
    },
    60_000,
  );

  it('is asked of them by name again, and stands on the record', () => {
    const other = clear.fork().send(inVoice({ type: 'reply', id: 'clearToCrank' }, 'technician'));
    expect(other.last.notes).toEqual([
      { kind: 'otherVoice', data: { step: 'noFuelCrank.untilPressure', certainty: 0.99 } },
    ]);
    expect(other.reply('clearToCrank').name).toBe('noFuelCrank.untilPressure.clearReadBack');
  });

  it('is taken by keys and touch as ever: no voice is heard there', () => {
    expect(clear.fork().reply('clearToCrank', { via: 'keys' }).name).not.toBe(clear.name);
  });
});

describe('a voice', () => {
  it('never keeps anybody from saying what stops', () => {
    const stopped = leaks.fork().send(inVoice({ type: 'reply', id: 'leak' }, 'technician'));
    expect(stopped.name).toMatch(/^stopped/);
    expect(clear.fork().send({ type: 'stop' }).name).toMatch(/^stopped/);
  });

  it("of the second person grants nothing: what they say for the technician is the technician's to confirm", () => {
    const filled = new Driver(demoSix).goodUntil('fill.coolantFilled.asking');
    const said = filled.send(inVoice({ type: 'reply', id: 'coolantFull' }, 'second'));
    expect(said.name).toBe('fill.coolantFilled.readingBack');
  });
});
