import { pass } from '../progress.ts';
import type { HoldStep } from '../steps.ts';
import { announce, startTimer, timerOver } from '../timing.ts';
import { type Nodes, remark, speak } from '../toolkit.ts';

/** Time that has to pass: spoken at its start, half, last ten seconds and end. */
export function holdNodes(step: HoldStep): Nodes {
  const done = pass(step);
  return {
    begin: {
      always: {
        target: 'counting',
        actions: [
          startTimer(({ context }) => step.seconds(context)),
          ...speak(({ context }) => ({ line: 'ask', values: step.values?.(context) ?? {} })),
          remark(({ context }) => ({
            line: 'holdStarts',
            values: { title: { step: step.id }, time: { unit: 's', si: step.seconds(context) } },
          })),
        ],
      },
    },
    counting: {
      meta: { replies: [], by: step.by, awaits: 'time' },
      on: {
        clock: [
          {
            guard: timerOver,
            target: done.target,
            actions: [
              remark(() => ({ line: 'holdDone', values: { title: { step: step.id } } })),
              ...done.actions,
            ],
          },
          announce,
        ],
      },
    },
  };
}
