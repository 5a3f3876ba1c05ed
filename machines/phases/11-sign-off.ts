import type { Profile } from '../../src/profile/schema.ts';
import type { Context } from '../context.ts';
import { coolEnough } from '../limits/engine.ts';
import { confirm, reading, sensors } from '../step-makers.ts';
import type { Step } from '../steps.ts';
import type { PromptValue } from '../vocabulary.ts';

/** Skipped steps, what was left open and accepted codes stay on the sheet until somebody has done something about them. */
const itemsLeft = (context: Context): readonly PromptValue[] => [
  ...context.skips.map(skip => ({ step: skip.step })),
  ...context.openItems.map(
    ({ step, quantity, si, finding }): PromptValue => ({
      list: [
        { step },
        ...(quantity === undefined || si === undefined ? [] : [{ quantity, si }]),
        ...(finding === undefined ? [] : [{ reply: finding }]),
      ],
      joined: 'plain',
    }),
  ),
  ...context.faults.filter(fault => fault.accepted).map(fault => ({ code: fault })),
];

/** Nobody opens a cap because the list says that it comes next. */
const levels = { gate: 'coldLevels', needs: ['coolEnough'] } as const;
const bottles = { group: 'coldLevels', ok: 'coldFull' } as const;
const torqueGroups = ['firstTorqued', 'secondTorqued', 'thirdTorqued'] as const;

/** Levels again when cold, the retorque list, and the supervisor's signature. */
export const signOffSteps = ({ retorque, shutdown, steering }: Profile): readonly Step[] => [
  reading('signOff.cool', 'coolantTemperature', coolEnough, {
    // A hot cap is opened on this number.
    byTime: true,
    gate: 'coolEnough',
    values: () => ({
      unit: { unitOf: 'coolantTemperature' },
      limit: { brief: 'coolantTemperature', si: shutdown.safeToOpenC },
    }),
  }),
  confirm('signOff.oilLevel', 'levelGood', { ...levels, dipstick: true }),
  ...(steering
    ? [
        confirm('signOff.coolantLevel', 'coolantFull', { ...levels, together: bottles }),
        confirm('signOff.steeringLevel', 'steeringFull', { ...levels, together: bottles }),
      ]
    : [confirm('signOff.coolantLevel', 'coolantFull', levels)]),
  sensors('signOff.retorque', { items: retorque, ok: 'torqued', groups: torqueGroups }),
  confirm('signOff.openItems', 'itemsNoted', {
    by: 'supervisor',
    when: context => itemsLeft(context).length > 0,
    values: context => ({ items: { list: itemsLeft(context) } }),
  }),
  confirm('signOff.sign', 'iSign', {
    by: 'supervisor',
    gate: 'signature',
    needs: ['coldLevels', 'noLeaksAfter'],
  }),
];
