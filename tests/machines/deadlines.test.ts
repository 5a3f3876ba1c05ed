import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { procedureFor } from '../../machines/first-start.ts';
import { offerOf } from '../../machines/moment.ts';
import type { Profile } from '../../src/profile/schema.ts';
import { ofKind } from '../../src/record/vocabulary/index.ts';
import type { EventBody } from '../../src/session/hearing.ts';
import type { Driver } from './helpers/driver.ts';
import { demoBoat, demoSix } from './helpers/profiles.ts';
import { sessionAt } from './limits/sessions.ts';

/** The same sequences on every run. */
const SEED = 20_261_129;

/** What a read-back may run past the limit of its question. */
const READ_BACK_MS = 8000;

/** Every step whose answer has seconds of its own, of all that the demo engines have. */
const limitedSteps = (profile: Profile) =>
  procedureFor(profile).flatMap(step =>
    step.kind === 'confirm' && step.within
      ? [{ profile, id: step.id, ok: step.ok, within: step.within, name: `${step.id}, ${profile.name}` }]
      : [],
  );
const limited = [demoSix, demoBoat].flatMap(limitedSteps);

const how = fc.record({
  afterMs: fc.oneof(fc.integer({ min: 0, max: 4000 }), fc.integer({ min: 4000, max: 31_000 })),
  by: fc.constantFrom('technician' as const, 'second' as const),
  via: fc.constantFrom('voice' as const, 'keys' as const, 'touch' as const),
});

const said = (...bodies: readonly EventBody[]) => fc.constantFrom(...bodies);
const reply = (id: 'yes' | 'no' | 'notYet'): EventBody => ({ type: 'reply', id });

/** What may come while the seconds run: the answer above all, its read-back, other words, and looks at the clock. */
const wordsFor = (ok: Extract<EventBody, { type: 'reply' }>['id']) =>
  fc.oneof(
    { weight: 4, arbitrary: said({ type: 'reply', id: ok }) },
    { weight: 3, arbitrary: said(reply('no')) },
    { weight: 2, arbitrary: said(reply('yes')) },
    {
      weight: 2,
      arbitrary: said(
        reply('notYet'),
        { type: 'unclear' },
        { type: 'clock' },
        { type: 'sayAgain' },
        { type: 'hold' },
        { type: 'continue' },
        { type: 'goBack' },
        { type: 'takeBack' },
        { type: 'skip' },
      ),
    },
  );

const leaves = (driver: Driver, step: string) => driver.context.step !== step || driver.context.stop !== null;

describe('an answer that has seconds of its own', () => {
  it('is asked for in these steps', () => {
    expect(limited.map(({ id }) => id)).toEqual([
      'keyOn.heaterDone',
      'firstFire.oilPressure',
      'firstRun.oilPressure',
      'keyOn.heaterDone',
      'firstFire.oilPressure',
      'firstFire.rawWater',
      'firstRun.oilPressure',
      'firstRun.rawWaterOpen',
    ]);
  });

  it.each(limited)(
    '$name: whatever is said in whatever order, the gate is passed only by a reply given in time, and as judged',
    ({ profile, id, ok, within }) => {
      const begun = sessionAt(profile, `${id}.asking`);
      const sinceMs = within.sinceMs?.(begun.context) ?? begun.nowMs;
      const limitMs = sinceMs + within.seconds(begun.context) * 1000;
      const reached = { passed: 0, late: 0 };
      fc.assert(
        fc.property(
          fc.array(fc.tuple(wordsFor(ok), how), { minLength: 1, maxLength: 12, size: 'max' }),
          turns => {
            const driver = begun.fork([]);
            let saidMs = Number.POSITIVE_INFINITY;
            for (const [body, way] of turns) {
              // The session looks at the clock when it is asked to, before anything that is said later.
              while (
                !leaves(driver, id) &&
                (driver.alarmMs ?? Number.POSITIVE_INFINITY) <= driver.nowMs + way.afterMs
              )
                driver.ring();
              if (leaves(driver, id)) break;
              driver.send(body, way);
              if (body.type === 'reply' && body.id === ok) saidMs = driver.nowMs;
            }
            const passed = driver.notes.find(ofKind('passed'));
            if (driver.context.stop) reached.late += 1;
            if (!passed) return;
            reached.passed += 1;
            expect(saidMs).toBeLessThan(limitMs);
            expect(driver.nowMs).toBeLessThan(limitMs + READ_BACK_MS);
            expect(driver.notes.find(ofKind('inTime'))?.data.met).toBe(true);
          },
        ),
        { seed: SEED, numRuns: 150 },
      );
      expect(reached.passed).toBeGreaterThan(15);
      expect(reached.late).toBeGreaterThan(15);
    },
  );

  it('that is denied after its time has passed stops in the same breath, though its read-back was in time', () => {
    const said = sessionAt(demoSix, 'firstFire.oilPressure.asking').reply('pressureGood', { afterMs: 7500 });
    expect(said.name).toBe('firstFire.oilPressure.readingBack');
    said.reply('no', { afterMs: 3000 });
    expect(said.name).toBe('stopped.makingSafe');
    expect(said.context.stop).toMatchObject({ cause: 'noOilPressure', lateAfterS: 8 });
  });

  it('that is denied in time has only what was left of it, and a read-back of its own', () => {
    const denied = sessionAt(demoSix, 'firstFire.oilPressure.asking')
      .reply('pressureGood', { afterMs: 2000 })
      .reply('no', { afterMs: 2000 });
    expect(denied.name).toBe('firstFire.oilPressure.asking');
    expect(denied.fork([]).clock(3999).name).toBe('firstFire.oilPressure.asking');
    expect(denied.fork([]).clock(4000).context.stop?.cause).toBe('noOilPressure');
    const again = denied.fork([]).reply('pressureGood', { afterMs: 3500 });
    expect(again.clock(7999).name).toBe('firstFire.oilPressure.readingBack');
    expect(again.clock(1).context.stop).toMatchObject({ cause: 'noOilPressure', lateAfterS: 8 });
  });

  it('is judged by its rule too, where nobody looked at the clock', () => {
    for (const { profile, id, ok, within } of limited) {
      const late = sessionAt(profile, `${id}.asking`);
      const { deadline } = late.context;
      const by = offerOf(late.moment).by;
      // A deadline that was moved by mistake opens nothing.
      late.moment = {
        ...late.moment,
        context: { ...late.context, deadline: deadline && { ...deadline, atMs: deadline.atMs + 600_000 } },
      } as typeof late.moment;
      late.reply(ok, { via: 'keys', by, afterMs: within.seconds(late.context) * 1000 });
      expect(late.context.stop?.cause, id).toBe(within.cause);
      expect(late.context.done).not.toContain(id);
    }
  });
});
