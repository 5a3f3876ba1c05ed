import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { offerOf } from '../../machines/moment.ts';
import type { ReplyId } from '../../prompts/types.ts';
import type { Driver, How } from './helpers/driver.ts';
import { demoSix } from './helpers/profiles.ts';
import { sessionAt } from './limits/sessions.ts';

/** The same sequences on every run. */
const SEED = 20_261_129;
const K = { via: 'keys' } as const;

const knocking = () => sessionAt(demoSix, 'firstFire.eyes.item2').reply('knocking', { ...K, by: 'second' });

/** What ends the start is known, as the cause or besides it. */
const isKnocking = ({ context: { stop } }: Driver) =>
  stop !== null && (stop.cause === 'knocking' || stop.also.includes('knocking'));

const turn = fc.record({
  which: fc.nat(30),
  stops: fc.boolean(),
  by: fc.constantFrom('technician' as const, 'second' as const),
  via: fc.constantFrom('voice' as const, 'keys' as const, 'touch' as const),
});

describe('an engine that knocked', () => {
  it('is not fired again by keys either, whatever was called out over it', () => {
    const driver = knocking()
      .reply('causeSmokeOrFire', { ...K, by: 'second' })
      .reply('allOff', { ...K, by: 'technician' })
      .reply('no', { ...K, by: 'technician' })
      .reply('causeFalseAlarm', { ...K, by: 'second' });
    if (driver.name === 'stopped.askingCaller') driver.reply('causeFalseAlarm', { ...K, by: 'second' });
    expect(driver.name).toMatch(/^stopped\.(causeReadBack|callerReadBack)$/);
    expect(driver.reply('yes', { ...K, by: 'second' }).name).toBe('ended');
    expect(driver.lines).toContain('knockingEnds');
  });

  it('never comes to where work goes on, on any path of words, keys and people', () => {
    const reached = { ended: 0, known: 0 };
    fc.assert(
      fc.property(fc.array(turn, { minLength: 4, maxLength: 25, size: 'max' }), turns => {
        const driver = knocking();
        for (const { which, stops, ...how } of turns) {
          if (driver.over) break;
          const { replies } = offerOf(driver.moment);
          const id: ReplyId | undefined = replies[which % Math.max(1, replies.length)];
          const known = isKnocking(driver);
          if (known) reached.known += 1;
          if (id === undefined || (stops && which === 0)) driver.stop(how satisfies How);
          else driver.reply(id, how);
          if (known && isKnocking(driver))
            expect(driver.name).not.toMatch(/^stopped\.(reopened|readyReadBack)$/);
          if (!driver.name.startsWith('stopped') && !driver.over) break;
        }
        if (driver.name === 'ended') reached.ended += 1;
      }),
      { seed: SEED, numRuns: 600 },
    );
    expect(reached.known).toBeGreaterThan(500);
    expect(reached.ended).toBeGreaterThan(30);
  });
});
