import { expect, it } from 'vitest';
import { english } from '../../prompts/en/index.ts';
import { grammarOf } from '../../src/session/grammar.ts';
import { rangeTold } from '../../src/session/range-told.ts';
import { goUntil, rig } from '../helpers/session-rig.ts';

it('the range of what is asked for is told in SI, whatever unit people speak', async () => {
  const run = await rig('demo-six', 'us');
  await run.session.begin();
  await goUntil(run, 'fill.oilQuantity.asking');
  const told = (units: 'us' | 'metric') =>
    rangeTold(grammarOf(run.session.moment, english, units, 'keys').number, units);
  const metric = told('metric');
  const limits = metric?.limits;
  if (typeof limits !== 'object' || !('limits' in limits)) throw new Error('no limits');
  expect(metric?.name).toEqual({ quantityName: 'oilQuantity' });
  expect(limits.limits).toMatchObject({ unit: 'litre', of: 'oilQuantity' });
  expect(told('us')).toMatchObject({
    limits: {
      limits: {
        unit: 'litre',
        min: expect.closeTo(limits.limits.min ?? Number.NaN, 0),
        max: expect.closeTo(limits.limits.max ?? Number.NaN, 0),
      },
    },
  });
});

it('no range is told where no number is asked for, or none that a gauge shows', () => {
  expect(rangeTold(undefined, 'us')).toBeNull();
  const slot = { leads: [], units: [], min: 0, max: 9, step: 1 };
  expect(rangeTold({ ...slot, id: 'noQuantity' }, 'us')).toBeNull();
});
