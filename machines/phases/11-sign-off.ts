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

/**
 * What was locked out, opened or inhibited for the start and is given back at its end, the last of all: from then on a set
 * may start by itself, and a filter clean itself. Common practice, no published source.
 */
function givenBack({ use, jacketHeater, afterTreatment }: Profile): readonly PromptValue[] {
  return [
    ...(use.kind === 'generator'
      ? ([
          { line: 'breakerBack', values: { at: use.breaker } },
          { line: 'automaticBack', values: { at: use.modeSwitch ?? use.autoStart } },
        ] as const)
      : []),
    ...(jacketHeater ? ([{ line: 'jacketHeaterBack', values: { at: jacketHeater.at } }] as const) : []),
    ...(afterTreatment === 'none' ? [] : ([{ line: 'regenerationBack', values: {} }] as const)),
  ];
}

function handBackSteps(profile: Profile): readonly Step[] {
  const items = givenBack(profile);
  const mayStart = profile.use.kind === 'generator';
  return profile.handsBack && items.length > 0
    ? [
        confirm('signOff.handBack', 'handedBack', {
          gate: 'handedBack',
          needs: ['coldLevels', 'noLeaksAfter'],
          values: () => ({
            clear: mayStart ? { line: 'mayStartItself', values: {} } : '',
            items: { list: items },
          }),
        }),
      ]
    : [];
}

/** Levels again when cold, the retorque list, and the supervisor's signature. */
export function signOffSteps(profile: Profile): readonly Step[] {
  const { retorque, shutdown, steering } = profile;
  const handBack = handBackSteps(profile);
  return [
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
    ...handBack,
    confirm('signOff.openItems', 'itemsNoted', {
      by: 'supervisor',
      when: context => itemsLeft(context).length > 0,
      values: context => ({ items: { list: itemsLeft(context) } }),
    }),
    confirm('signOff.sign', 'iSign', {
      by: 'supervisor',
      gate: 'signature',
      needs: ['coldLevels', 'noLeaksAfter', ...(handBack.length > 0 ? (['handedBack'] as const) : [])],
    }),
  ];
}
