import { replyNeedsReadBack, weightOf } from '../assurance.ts';
import { judgementData } from '../judging.ts';
import { NEXT, pass, stopFor } from '../progress.ts';
import type { ConfirmStep, Judge, Step } from '../steps.ts';
import { atMs, type Effect, type Look, type Move, type Nodes, note, remark, withMeta } from '../toolkit.ts';
import { startDeadline } from './deadline.ts';
import { askedAgain, type Figures, settled } from './figures.ts';
import { askFor, askReply, readBack, readBackReply, setAside, type Waiting } from './question.ts';
import { refusedWhileRunning } from './standing.ts';
import { togetherNodes } from './together.ts';

/** Whether nothing hangs on the reply that a misheard "yes" or "done" could bring about. */
const isPlain = (step: ConfirmStep) =>
  !(step.gate || step.trouble || step.within || step.standing || step.possible) && step.by === 'technician';

/** Asks; confirms what has to be; passes. */
export function confirmNodes(step: ConfirmStep, all: readonly Step[]): Nodes {
  const waiting: Waiting = {
    by: step.by,
    critical: step.within !== undefined,
    late: step.within?.cause,
    trouble: step.trouble,
    // Nobody signs by a plain yes, and "this, or that?" is not answered by one.
    affirmed:
      step.gate === 'signature' || step.trouble?.named
        ? undefined
        : { reply: step.ok, always: isPlain(step) },
  };
  const ask = askFor(step);
  if (step.drill) return drillNodes(step);
  if (step.readsBack && step.ok === 'yes') return figuresNodes(step, step.readsBack);
  const passed = pass(step);
  const first = [
    ...(step.within ? [inTime(step.within.judge)] : []),
    ...(step.readsBack ? [settled(step.readsBack)] : []),
  ];
  const done = { ...passed, actions: [...first, ...passed.actions] };
  const late = step.within ? [answeredLate(step.within, [setAside(step.ok), ...first])] : [];
  const possible = ({ context }: Look) => step.possible?.(context) ?? true;
  const nodes: Nodes = {
    asking: askReply(waiting, ask, [
      ...(step.standing ? refusedWhileRunning.map(move => ({ reply: step.ok, move })) : []),
      {
        reply: step.ok,
        move: {
          guard: look => !possible(look),
          actions: remark(() => ({ line: 'notPossible', values: {} })),
        },
      },
      ...(step.gate
        ? [
            {
              reply: step.ok,
              move: {
                guard: replyNeedsReadBack(weightOf(step)),
                target: 'readingBack',
                actions: setAside(step.ok),
              },
            },
          ]
        : []),
      ...late.map(move => ({ reply: step.ok, move })),
      { reply: step.ok, move: { ...done, actions: [setAside(step.ok), ...done.actions] } },
      ...(step.readsBack
        ? [{ reply: 'no' as const, move: { target: NEXT, actions: askedAgain(step.readsBack) } }]
        : []),
    ]),
  };
  if (step.gate)
    nodes.readingBack = readBack(
      waiting,
      readBackReply,
      [...(step.within ? [answeredLate(step.within, first)] : []), done],
      { target: 'asking' },
    );
  if (step.together) return togetherNodes(step, step.together, all, nodes);
  return step.within ? { ...limited(step.within), ...nodes } : nodes;
}

/** The limit begins when the step is entered, or earlier where that is said; not again with each question. */
const limited = (within: NonNullable<ConfirmStep['within']>): Nodes => ({
  begin: {
    always: {
      target: 'asking',
      actions: startDeadline(
        look => within.seconds(look.context),
        within.cause,
        look =>
          (look.event.type === 'goBack' ? undefined : within.firstSinceMs?.(look.context)) ??
          within.sinceMs?.(look.context) ??
          atMs(look.event),
      ),
    },
  },
});

/** How long the reply took; the time of its read-back does not count. */
const tookS = ({ context: { deadline, pending }, event }: Look): number => {
  const answeredMs = pending?.kind === 'reply' ? pending.atMs : atMs(event);
  return deadline ? (answeredMs - deadline.sinceMs) / 1000 : Number.NaN;
};

/** Said too late, by the limit or by the rule behind it: whoever looked at the clock, the gate stays shut and all stops. */
function answeredLate(
  { seconds, cause, judge }: NonNullable<ConfirmStep['within']>,
  first: readonly Effect[],
): Move {
  const stop = stopFor(cause);
  return {
    guard: look => {
      const judgement = judge(look.context, tookS(look));
      return !(tookS(look) < seconds(look.context)) || (judgement.ok && !judgement.value.met);
    },
    target: stop.target,
    actions: [...first, ...stop.actions],
  };
}

/** How long the reply took, held against its rule. */
const inTime = (judge: Judge) =>
  note(look => {
    const { context } = look;
    const seconds = tookS(look);
    return {
      kind: 'inTime',
      data: { step: context.step, seconds, unit: 's', ...judgementData(judge(context, seconds)) },
    };
  });

/** Here the stop words are the reply, and they do what they always do; `stopped` leads back. */
function drillNodes(step: ConfirmStep): Nodes {
  const waiting: Waiting = { by: step.by, critical: false };
  return { asking: withMeta(askReply(waiting, askFor(step), []), { awaits: 'drill' }) };
}

/** Reads numbers back that were only repeated until now; where one is wrong, they are asked for again. */
function figuresNodes(step: ConfirmStep, figures: Figures): Nodes {
  const waiting: Waiting = { by: step.by, critical: false };
  const done = pass(step);
  return {
    asking: readBack(waiting, askFor(step), [{ ...done, actions: [settled(figures), ...done.actions] }], {
      target: NEXT,
      actions: askedAgain(figures),
    }),
  };
}
