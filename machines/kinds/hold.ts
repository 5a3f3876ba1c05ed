import { pass } from '../progress.ts';
import type { HoldStep } from '../steps.ts';
import { announce, startTimer, timerOver } from '../timing.ts';
import { atMs, type Look, type Nodes, remark, speak } from '../toolkit.ts';

/** Time that has to pass: spoken at its start, half, last ten seconds and end; some of it begins anew after a pause. */
export function holdNodes(step: HoldStep): Nodes {
  const done = pass(step);
  const broken = ({ context, event }: Look) =>
    step.unbroken === true && event.type === 'continue' && context.timer?.startedMs !== atMs(event);
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
      always: { guard: broken, target: 'begin' },
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
