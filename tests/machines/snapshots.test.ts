import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { SessionEvent } from '../../machines/events.ts';
import { type Moment, stateName } from '../../machines/moment.ts';
import { Driver, takeStep } from './helpers/driver.ts';
import { demoFour, demoSix } from './helpers/profiles.ts';

/** What a moment is, without the machinery around it. */
const seen = (moment: Moment) => ({
  name: stateName(moment),
  value: moment.value,
  status: moment.status,
  context: moment.context,
});

const throughJson = <T>(value: T): T => JSON.parse(JSON.stringify(value));

/** A session with a hold, a stop, a skip and a step back in it. */
const eventful = (() => {
  const driver = new Driver(demoSix).goodUntil('fill.coolantBleed.counting').clock(5000);
  driver.send({ type: 'hold' }).send({ type: 'continue' }, { afterMs: 40_000 });
  driver.goodUntil('prime.strokes.asking').send({ type: 'skip' }).reply('reasonDoneBefore');
  driver.goodUntil('walkRound.boots.asking').send({ type: 'goBack' });
  driver.goodUntil('checks.leaks.item2').send({ type: 'unclear' }).stop();
  driver.goodUntil('warmUp.watch.between');
  return driver.goodToTheEnd();
})();

const runs = { 'an eventful start': eventful, 'an all-good one': new Driver(demoFour).goodToTheEnd() };

describe.each(Object.entries(runs))('%s', (_, run) => {
  it('is wholly determined by its events: replayed through JSON they lead to the same moment at each', () => {
    const events: SessionEvent[] = throughJson(run.history.map(({ event }) => event));
    const replayed = new Driver(run.profile);
    events.forEach((event, index) => {
      const { after, said, notes } = takeStep(replayed.machine, replayed.moment, event);
      replayed.moment = after;
      expect(seen(after)).toEqual(seen(run.history[index]?.after ?? run.moment));
      expect(said).toEqual(run.history[index]?.said);
      expect(notes).toEqual(run.history[index]?.notes);
    });
    expect(replayed.name).toBe('signedOff');
  });

  it('goes on the same from any moment that went through JSON and back', () => {
    fc.assert(
      fc.property(fc.nat(run.history.length - 2), index => {
        const moment = run.history[index]?.after;
        const next = run.history[index + 1]?.event;
        if (!moment || !next) throw new Error('There is no such moment.');
        // The history of a held state is kept as nodes, which JSON cannot hold: there, replay is the way back.
        if (stateName(moment) === 'held') return;
        const { value, context } = throughJson({ value: moment.value, context: moment.context });
        const restored = run.machine.resolveState({ value, context });
        expect(seen(restored)).toEqual(seen(moment));
        const [one, other] = [restored, moment].map(from => takeStep(run.machine, from, next));
        expect(seen(one?.after ?? moment)).toEqual(seen(other?.after ?? restored));
        expect(one?.said).toEqual(other?.said);
        expect(one?.notes).toEqual(other?.notes);
      }),
      { seed: 7, numRuns: 100 },
    );
  });

  it('knows nothing that JSON would lose', () => {
    for (const { after } of run.history) expect(throughJson(after.context)).toEqual(after.context);
  });

  it('is not changed by going on from it: a transition leaves the moment before it as it was', () => {
    for (const { before, event } of run.history.slice(0, 60)) {
      const frozen = throughJson(before.context);
      takeStep(run.machine, before, event);
      expect(before.context).toEqual(frozen);
    }
  });
});
