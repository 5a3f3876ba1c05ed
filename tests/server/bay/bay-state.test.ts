import { expect, test } from 'vitest';
import { bayState } from '../../../src/server/bay/bay-state.ts';
import type { Starter } from '../../../src/server/bay/starter.ts';
import { bayStateSchema } from '../../../src/server/protocol/index.ts';
import { demoJob } from '../../../src/session/demo-job.ts';
import { goUntil, rigAround } from '../../helpers/session-rig.ts';
import { partsOfABay } from './parts-of-a-bay.ts';

const usual = { job: demoJob, units: 'metric', language: 'fr' } as const;
/** What is asked of the starter: names, and what is usual. */
const starter = { profileNames: (bay: string) => [`engine of ${bay}`], usual } as unknown as Starter;

async function shown() {
  const bay = await partsOfABay();
  return { ...bay, state: () => bayState('bay', { current: bay.current, crew: bay.crew, starter }) };
}

test('a bay before a session shows its devices, what may be begun, and nothing of a session', async () => {
  const { state, current, crew } = await shown();
  expect(state()).toEqual({
    bay: 'bay',
    session: null,
    lost: null,
    view: null,
    profiles: ['engine of bay'],
    usual,
    language: 'fr',
    mayBeLeft: false,
    turn: current.turn,
    grammar: null,
    firing: null,
    devices: crew.list(),
    clear: { state: 'notAsked', untilSessionMs: null, ownDeviceOnly: true },
    holdAsked: null,
  });
});

test('a bay in a session shows it in its own language, with what may be said, how its engine fires and what is asked for', async () => {
  const { state, begin, run, current, supervisor, stopping, second, answerUntil } = await shown();
  await begin();
  current.askHold(supervisor);
  const { session, viewer } = run();
  expect(state()).toMatchObject({
    session: run().id,
    view: { key: 'job.card.asking' },
    language: 'en',
    mayBeLeft: false,
    turn: current.turn,
    firing: run().firing,
    holdAsked: { by: supervisor.name },
  });
  expect(state().firing).not.toBeNull();
  expect(state().view).toEqual(viewer.view());
  expect(state().grammar).toEqual(session.grammar('voice'));
  expect(bayStateSchema.parse(JSON.parse(JSON.stringify(state())))).toBeDefined();
  stopping.stop(second, '1');
  await answerUntil(() => state().mayBeLeft, ['all is off', 'correct']);
  await answerUntil(() => run().isOver, ['end the session', 'correct']);
  // Its last picture stays; nothing may be said in it, and nothing listens for its engine.
  expect(state()).toMatchObject({
    session: run().id,
    view: { outcome: 'ended' },
    mayBeLeft: false,
    grammar: null,
    firing: null,
  });
});

test('a bay shows that the second person’s clear is needed', async () => {
  const { state, begin, run, clock, crew } = await shown();
  await begin();
  const { session, record } = run();
  await goUntil(rigAround(session, clock(), record, record.path), 'noFuelCrank.untilPressure.askingClear');
  expect(state().clear).toEqual({ state: 'needed', untilSessionMs: null, ownDeviceOnly: crew.has('second') });
});
