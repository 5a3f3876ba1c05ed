import { describe, expect, it } from 'vitest';
import type { EventBody } from '../../src/session/hearing.ts';
import { Driver } from './helpers/driver.ts';
import { demoFour } from './helpers/profiles.ts';

const besideEar = (body: EventBody, speedRpm: number): EventBody =>
  body.type === 'reply' || body.type === 'value' ? { ...body, ear: { speedRpm } } : body;

const idle = new Driver(demoFour).goodUntil('checks.idle.item1');
const leaks = new Driver(demoFour).goodUntil('checks.leaks.item1');
const stopped = leaks.fork().send({ type: 'stop' }).send({ type: 'clock' }, { via: 'tool', afterMs: 5000 });
const saysIdle = (speedRpm: number) =>
  besideEar({ type: 'value', quantity: 'engineSpeed', si: 850 }, speedRpm);

describe('what the microphone hears of the engine', () => {
  it('questions a spoken speed that it contradicts, once; said again just so, it goes its way', () => {
    const driver = idle.fork().send(saysIdle(700));
    expect(driver.lines).toEqual(['heardDiffers']);
    expect(driver.name).toBe(idle.name);
    expect(driver.last.notes).toContainEqual(expect.objectContaining({ kind: 'disagreement' }));
    expect(driver.send(saysIdle(700)).lines).not.toContain('heardDiffers');
    expect(driver.name).not.toBe(idle.name);
  });

  it('lets a spoken speed that agrees with it go its way at once, as without it', () => {
    const [agrees, without] = [idle.fork().send(saysIdle(848)), idle.fork().value('engineSpeed', 850)];
    expect(agrees.name).toBe(without.name);
    expect(agrees.lines).toEqual(without.lines);
  });

  it('refuses that all is off beside an engine that it hears turning, however often it is said', () => {
    const asked = stopped.fork();
    for (let again = 0; again < 3; again++) {
      asked.send(besideEar({ type: 'reply', id: 'allOff' }, 720));
      expect(asked.lines).toEqual(['heardTurning']);
      expect(asked.name).toBe(stopped.name);
    }
  });

  it('never proves by its silence that an engine stands: what is said without it leads where it led', () => {
    const silent = stopped.fork().reply('allOff');
    expect(stopped.fork().send(besideEar({ type: 'reply', id: 'allOff' }, 0)).name).toBe(silent.name);
    // It waits for that to be said: time calls out again, and leads on nowhere by itself.
    const { name } = stopped;
    expect(stopped.ring().name).toBe(name);
  });
});
