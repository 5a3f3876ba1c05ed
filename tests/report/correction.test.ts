import { join } from 'node:path';
import { expect, test } from 'vitest';
import { buildDocument } from '../../src/report/document/build.ts';
import { summarize } from '../../src/report/summarize.ts';
import { goUntil } from '../helpers/session-rig.ts';
import { inputOf, sessionFor, tempFolder } from './support.ts';

test('who says another number at the read-back and then the right one is confirmed, and it is told', async () => {
  const run = await sessionFor(join(tempFolder(), 'log.jsonl'));
  await goUntil(run, 'noFuelCrank.voltage.asking');
  for (const said of ['10.6', '10.9', '10.6', 'correct']) await run.type(said);
  expect(run.key()).not.toMatch(/noFuelCrank.voltage/);
  await run.record.close();
  const model = summarize(await inputOf(run.path));
  expect(model.trust.replayFault).toBeUndefined();
  expect(model.trust.notUnderstood).toEqual([]);
  expect(buildDocument(model, 'us').blocks[0]).toMatchObject({ type: 'banner', tone: 'good' });
  expect(model.misheard).toMatchObject([
    { step: 'noFuelCrank.voltage', text: '10.9', reason: 'contradicted', repaired: { text: '10.6' } },
  ]);
});

test('who takes a number back that had only been repeated is confirmed, and it is told', async () => {
  const run = await sessionFor(join(tempFolder(), 'log.jsonl'));
  await goUntil(run, 'job.ambient.asking');
  for (const said of ['50', 'wrong', '41']) await run.type(said);
  expect(run.key()).toBe('job.coldestNight.asking');
  await run.record.close();
  const model = summarize(await inputOf(run.path));
  expect(model.trust.replayFault).toBeUndefined();
  expect(model.trust.notUnderstood).toEqual([]);
  expect(buildDocument(model, 'us').blocks[0]).toMatchObject({ type: 'banner', tone: 'good' });
});
