import { setImmediate } from 'node:timers/promises';
import { expect, test } from 'vitest';
import { ShownState } from '../../../src/server/bay/shown-state.ts';
import { bareBay } from './bare-bay.ts';

test('what changes in one turn of the program is told once, behind it; what cannot wait is told at once', async () => {
  let turn = '';
  let looks = 0;
  const shown = new ShownState(
    () => {
      looks += 1;
      return { ...bareBay, turn };
    },
    () => 7,
  );
  const told: string[] = [];
  shown.stream.listen(text => told.push(text));
  turn = 's/1';
  shown.show();
  turn = 's/2';
  shown.show();
  expect(told).toEqual([]);
  looks = 0;
  await setImmediate();
  expect(told).toHaveLength(1);
  // The whole of it is put together for that, and once.
  expect(looks).toBe(1);
  expect(shown.stream.snapshot()).toMatchObject({ seq: 1, sessionMs: 7, state: { turn: 's/2' } });
  turn = 's/3';
  shown.showNow();
  expect(told).toHaveLength(2);
  shown.show();
  await setImmediate();
  expect(told).toHaveLength(2);
  turn = 's/4';
  shown.show();
  await setImmediate();
  expect(told).toHaveLength(3);
});
