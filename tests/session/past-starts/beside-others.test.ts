import { expect, it } from 'vitest';
import { readLog } from '../../../src/record/index.ts';
import { readRecorded } from '../../../src/record/vocabulary/index.ts';
import { gather } from '../../../src/report/gather.ts';
import { summarize } from '../../../src/report/summarize.ts';
import type { PastStarts } from '../../../src/session/past-starts/beside-others.ts';
import { goUntil, rig } from '../../helpers/session-rig.ts';

const about = (value: number, spread: number, count = 14): readonly number[] =>
  Array.from({ length: count }, (_, index) => value + spread * ((index % 5) - 2));

/** What the driver of these tests reads is 10.4 V, 850 rpm, 14.2 V, and 10 K of warm-up in two minutes. */
const past: PastStarts = {
  'cranking-voltage': about(11.5, 0.1),
  'idle-speed': about(850, 10),
  // Too few to say anything.
  'charging-voltage': about(11, 0.1, 11),
  'warm-up-pace': about(38, 1),
};

async function startBeside(pastStarts: PastStarts | null) {
  const here = await rig('demo-six', 'metric');
  if (pastStarts) here.session.holdBeside(pastStarts);
  await goUntil(here);
  await here.record.close();
  const { entries } = readRecorded((await readLog(here.path)).entries);
  return { ...here, entries };
}

it('a start that is not like the earlier ones is told so at once, and its record and report say where it stands', async () => {
  const { entries, said, path } = await startBeside(past);
  const told = entries.flatMap(entry => (entry.kind === 'besideOthers' ? [entry.data] : []));
  expect(
    told.map(({ figure, within, below, above, others }) => [figure, within, below, above, others]),
  ).toEqual([
    ['cranking-voltage', false, 0, 14, 14],
    ['idle-speed', true, expect.any(Number), expect.any(Number), 14],
    ['warm-up-pace', false, 14, 0, 14],
  ]);
  const unlike = said.filter(sentence => / starts of this engine here/.test(sentence));
  expect(unlike).toHaveLength(2);
  expect(unlike[0]).toMatch(
    /Lowest voltage while cranking: 10\.4 V, lower than 14 of 14 starts of this engine here; usual: /,
  );
  expect(unlike[1]).toMatch(/Warm-up: 1:49 for ten degrees Celsius, slower than 14 of 14 starts/);
  // It stands behind the reading that it is about, and before anything else is asked.
  const crank = entries.findIndex(({ kind }) => kind === 'besideOthers');
  expect(entries[crank - 1]).toMatchObject({ kind: 'verdict', data: { step: 'noFuelCrank.voltage' } });
  // The procedure comes to the same without it: the record is carried out once more and confirmed.
  const model = summarize(await gather(path));
  expect(model.trust).toMatchObject({ sound: true, notUnderstood: [] });
  expect(model.trust.replayFault).toBeUndefined();
  expect(model.outcome).toEqual({ kind: 'signedOff' });
  expect(model.besideOthers.map(({ within }) => within)).toEqual([false, true, false]);
});

it('nothing is told, and nothing else changes, where there are no earlier starts', async () => {
  const [without, beside] = [await startBeside(null), await startBeside(past)];
  expect(without.entries.filter(({ kind }) => kind === 'besideOthers')).toEqual([]);
  const events = (entries: typeof without.entries) =>
    entries.flatMap(entry =>
      entry.kind === 'event' && entry.data.type !== 'clock' ? [entry.data.state] : [],
    );
  expect(events(beside.entries)).toEqual(events(without.entries));
});
