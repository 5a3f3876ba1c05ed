import { replyNeedsReadBack, weightOf } from '../assurance.ts';
import { heaterSeconds } from '../limits/electrics.ts';
import { burstSeconds, leastRestSeconds, restSeconds, starterIssue } from '../limits/starter.ts';
import { believed, pass, stopFor } from '../progress.ts';
import type { CrankStep, Step } from '../steps.ts';
import { announce, clearValidMs, startTimer, timerOver } from '../timing.ts';
import {
  atMs,
  type Line,
  type Look,
  type Move,
  type Node,
  type Nodes,
  remark,
  speak,
  update,
  withMeta,
} from '../toolkit.ts';
import { OUTCOME_WITHIN_S, startDeadline } from './deadline.ts';
import { tooEarly } from './early.ts';
import { heldBurst } from './held.ts';
import { movesOf, repliesOf } from './nodes.ts';
import {
  askFor,
  askReply,
  bySecondPerson,
  isReply,
  notUnderstood,
  readBack,
  readBackReply,
  setAside,
  type Waiting,
} from './question.ts';
import { refused, unmetNeeds } from './refused.ts';
import { runsUnseen } from './unseen.ts';

const secondClear = ({ context, event }: Look) =>
  context.clearAtMs !== null && atMs(event) - context.clearAtMs < clearValidMs(context);

const endBurst = update(({ context, event }) => ({
  timer: null,
  bursts: context.bursts.map((burst, index) =>
    index === context.bursts.length - 1 ? { ...burst, endMs: atMs(event) } : burst,
  ),
}));

/** A step that is done once more, after a stop, has its whole budget again. */
const outOfBudget =
  (step: CrankStep) =>
  ({ context }: Look) => {
    const bursts = context.bursts.slice(context.burstsBefore);
    const crankedMs = bursts.reduce((total, burst) => total + (burst.endMs - burst.startMs), 0);
    return (
      crankedMs >= step.giveUp.seconds(context) * 1000 || bursts.length >= context.profile.starter.maxBursts
    );
  };

/** What the step asks, and before it what has to be known before the first burst. */
const announced =
  (step: CrankStep): Line =>
  look => {
    const before = step.announces?.(look.context) ?? [];
    const ask = askFor(step)(look);
    return { ...ask, values: { ...ask.values, before: { list: before, joined: 'plain' } } };
  };

/**
 * One burst after another: every gate met, the second person clear just now, a burst inside the
 * thermal budget, the starter released, then either what was hoped for or a rest.
 */
export function crankNodes(step: CrankStep, all: readonly Step[]): Nodes {
  const done = pass(step);
  const giveUp = stopFor(step.giveUp.cause);
  const unseen = runsUnseen(step);
  const unmet = unmetNeeds(step, all);
  const bySecond: Waiting = { by: 'second', critical: false };
  const trouble = step.trouble ? stopFor(step.trouble.cause) : null;
  /** Whoever sees it says it, and is not asked whether it is so. */
  const untilTrouble = (node: Node): Node =>
    step.trouble && trouble
      ? {
          ...withMeta(node, {
            replies: [...repliesOf(node), step.trouble.reply],
            anybodys: [step.trouble.reply],
          }),
          on: {
            ...node.on,
            reply: [{ guard: isReply(step.trouble.reply), ...trouble }, ...movesOf(node, 'reply')],
          },
        }
      : node;
  const waiting: Waiting = { by: step.by, critical: false };
  const burst = ({ context, event }: Look) => burstSeconds(context, atMs(event), step.burst(context));

  const rest = ({ context, event }: Look) => restSeconds(context, atMs(event), step.burst(context));
  const leastRest = ({ context, event }: Look) => leastRestSeconds(context, atMs(event));
  const mayCrank = (look: Look) => unmet(look).length === 0 && secondClear(look) && burst(look) > 0;

  /** What the heater gave is gone by the end of a rest. */
  const isColdAgain = ({ context }: Look) => step.until === 'fired' && heaterSeconds(context) > 0;

  const callRelease = remark(() => ({ line: 'release', values: {}, priority: 'hazard' }));
  /** The seconds for oil pressure run already. */
  const callReleaseOnce = remark(() => ({ line: 'release', values: {}, priority: 'hazard', once: true }));
  /** The starter is let go at once, whatever else has to be made sure of. */
  const seen: readonly Move[] = [
    ...(step.readBack
      ? [
          {
            guard: replyNeedsReadBack(weightOf(step)),
            target: 'released',
            actions: [setAside(step.until)],
          },
        ]
      : []),
    {
      target: done.target,
      actions: [
        step.readBack ? callRelease : callReleaseOnce,
        ...(step.until === 'fired' ? [unseen.sinceBurst] : []),
        ...done.actions,
      ],
    },
  ];
  const seenNow = seen.map(move => ({
    ...move,
    guard: (look: Look) => isReply(step.until)(look) && (move.guard?.(look) ?? true),
  }));
  const toRest = (seconds: (look: Look) => number) => ({
    target: 'resting',
    actions: [
      startTimer(seconds),
      remark(look => ({ line: 'rest', values: { time: { unit: 's', si: seconds(look) } } })),
    ],
  });
  const afterBurst: readonly Move[] = [{ guard: outOfBudget(step), ...giveUp }, toRest(rest)];
  const early = tooEarly(step);
  const held = heldBurst(step, endBurst, { target: 'released', actions: [setAside(step.until)] }, afterBurst);

  const clearTooOld = {
    target: 'askingClear',
    actions: [remark(() => ({ line: 'clearTooOld', values: {} })), update(() => ({ clearAtMs: null }))],
  };

  const burstIssue = ({ context, event }: Look) => starterIssue(context, atMs(event));
  /** Nobody is told that a clear was too old where it is the starter that is not known. */
  const notWorkedOut = {
    target: 'askingClear',
    actions: [
      remark(look => {
        const issue = burstIssue(look);
        return { line: 'burstUnknown', values: { why: issue ? { issue } : '' } };
      }),
      update(() => ({ clearAtMs: null })),
    ],
  };

  const askClear: Line = look => ({
    line: 'askClear',
    values: {},
    ...(look.event.type === 'continue' && isColdAgain(look) ? { prefix: 'heatAgain' as const } : {}),
  });

  const askReady: Line = look => ({
    line: 'crankReady',
    values: { burst: { unit: 's', si: burst(look) } },
  });

  const cranking: Node = {
    tags: ['critical', 'cranking'],
    meta: { replies: [step.until, 'nothingYet'], by: step.by, awaits: 'starter' },
    entry: [
      startTimer(burst),
      update(look => ({
        clearAtMs: null,
        bursts: [
          ...look.context.bursts,
          { step: step.id, startMs: atMs(look.event), endMs: atMs(look.event) },
        ],
      })),
      ...speak(() => ({ line: 'crankNow', values: {} })),
    ],
    on: {
      reply: [
        ...held.whileCranking,
        { guard: look => isReply(step.until)(look) && early.now(look), ...early.move },
        ...seenNow,
        { guard: isReply('nothingYet'), target: 'outcome' },
      ],
      clock: [{ guard: timerOver, target: 'outcome' }, announce],
    },
    // Whatever ends a burst, a stop included: the starter has been warmed by it.
    exit: endBurst,
  };

  return {
    begin: {
      entry: [update(({ context }) => ({ burstsBefore: context.bursts.length })), ...speak(announced(step))],
      always: [
        { guard: look => unmet(look).length > 0, target: 'refused' },
        // The last burst may belong to another step, or to a try that was stopped.
        { guard: look => leastRest(look) > 0, ...toRest(leastRest) },
        { target: 'askingClear' },
      ],
    },
    refused: refused(step, all, 'begin'),
    askingClear: unseen.watched(
      withMeta(
        askReply(bySecond, askClear, [
          {
            reply: 'clearToCrank',
            move: { guard: bySecondPerson, target: 'clearReadBack', actions: setAside('clearToCrank') },
          },
        ]),
        { awaits: 'clear' },
      ),
    ),
    clearReadBack: unseen.watched(
      withMeta(
        readBack(
          bySecond,
          readBackReply,
          [
            {
              guard: bySecondPerson,
              target: 'ready',
              actions: update(({ event }) => ({ clearAtMs: atMs(event), misheard: 0, pending: null })),
            },
          ],
          { target: 'askingClear' },
        ),
        { awaits: 'clear' },
      ),
    ),
    ready: unseen.watched({
      meta: { replies: ['ready', 'no'], by: step.by },
      entry: [...speak(askReady)],
      on: {
        reply: [
          { guard: look => isReply('ready')(look) && believed(look) && mayCrank(look), target: 'cranking' },
          { guard: look => isReply('ready')(look) && !secondClear(look), ...clearTooOld },
          { guard: look => isReply('ready')(look) && burstIssue(look) !== null, ...notWorkedOut },
          { guard: look => isReply('ready')(look) && burst(look) <= 0, ...toRest(rest) },
          { guard: look => isReply('ready')(look) && unmet(look).length > 0, target: 'refused' },
          { guard: isReply('no'), target: 'askingClear', actions: update(() => ({ clearAtMs: null })) },
        ],
        unclear: notUnderstood(askReady, step.by),
        clock: { guard: look => !secondClear(look), ...clearTooOld },
      },
    }),
    cranking: untilTrouble(cranking),
    ...Object.fromEntries(Object.entries(held.nodes).map(([key, node]) => [key, untilTrouble(node)])),
    early: untilTrouble(early.node(afterBurst)),
    released: untilTrouble({
      ...readBack(waiting, readBackReply, [done], { target: 'outcome' }),
      entry: [callRelease, ...speak(readBackReply)],
    }),
    outcome: untilTrouble({
      ...withMeta(
        askReply(
          { by: step.by, critical: true, late: 'other' },
          () => ({ line: 'burstOver', values: { reply: { reply: step.until } } }),
          [
            { reply: 'nothingYet', move: unseen.refused },
            { reply: step.until, move: { guard: early.now, ...early.move } },
            ...held.afterBurst.map(move => ({ reply: step.until, move })),
            ...(step.until === 'fired' ? [{ reply: step.until, move: unseen.late }] : []),
            ...seen.map(move => ({ reply: step.until, move })),
            ...afterBurst.map(move => ({ reply: 'nothingYet' as const, move })),
          ],
        ),
        { awaits: 'outcome' },
      ),
      tags: ['critical', 'cranking'],
      entry: [
        startDeadline(() => OUTCOME_WITHIN_S, 'other'),
        callRelease,
        ...speak(() => ({ line: 'burstOver', values: { reply: { reply: step.until } } })),
      ],
      exit: update(() => ({ deadline: null })),
    }),
    ...unseen.nodes,
    resting: unseen.watched({
      meta: { replies: [], by: step.by, awaits: 'time' },
      on: {
        clock: [
          {
            guard: look => timerOver(look) && isColdAgain(look),
            target: 'askingClear',
            actions: [update(() => ({ timer: null })), remark(() => ({ line: 'heatAgain', values: {} }))],
          },
          { guard: timerOver, target: 'askingClear', actions: update(() => ({ timer: null })) },
          announce,
        ],
      },
    }),
  };
}
