import { expect, it } from 'vitest';
import type { SessionEvent } from '../../../machines/events.ts';
import { controlsOf } from '../../../machines/moment.ts';
import type { Note } from '../../../src/record/vocabulary/index.ts';
import { Comparison } from '../../../src/session/past-starts/comparison.ts';
import { goUntil, rig } from '../../helpers/session-rig.ts';
import { demoSix } from '../../machines/helpers/profiles.ts';

const idle = (value: number): Note =>
  ({ kind: 'verdict', data: { step: 'checks.idle', value } }) as unknown as Note;
const past = { 'idle-speed': Array.from({ length: 14 }, (_, index) => 850 + (index % 5)) };
const event = (type: 'clock' | 'stop'): SessionEvent => ({ type, by: 'technician', via: 'tool', atMs: 0 });

const beside = () => {
  const comparison = new Comparison(demoSix);
  comparison.holdBeside(past);
  return comparison;
};

it('a figure stands somewhere among the earlier ones, where these are enough, and no other note does', () => {
  expect(beside().take(idle(1100), 0)).toMatchObject({ figure: 'idle-speed', value: 1100, within: false });
  expect(beside().take(idle(851), 0)).toMatchObject({ within: true });
  expect(new Comparison(demoSix).take(idle(1100), 0)).toBeUndefined();
  expect(beside().take({ kind: 'stopped', data: {} } as unknown as Note, 0)).toBeUndefined();
});

it('what is unlike the others is told once, before what is asked next, and what is like them never', async () => {
  const { session } = await rig();
  const comparison = beside();
  comparison.take(idle(851), 0);
  expect(comparison.due(event('clock'), session.moment)).toEqual([]);
  comparison.take(idle(1100), 0);
  expect(comparison.due(event('clock'), session.moment)).toMatchObject([{ line: 'higherThanOthers' }]);
  expect(comparison.due(event('clock'), session.moment)).toEqual([]);
});

it('it waits where seconds count, and a stop leaves it to the report', async () => {
  const run = await rig();
  const calm = run.session.moment;
  await run.session.begin();
  await goUntil(run, 'firstFire.oilPressure.asking');
  const urgent = run.session.moment;
  expect([calm, urgent].map(moment => controlsOf(moment).includes('hold'))).toEqual([true, false]);
  const comparison = beside();
  comparison.take(idle(1100), 0);
  expect(comparison.due(event('clock'), urgent)).toEqual([]);
  expect(comparison.due(event('clock'), calm)).toHaveLength(1);
  comparison.take(idle(1100), 0);
  comparison.due(event('stop'), urgent);
  expect(comparison.due(event('clock'), calm)).toEqual([]);
});
