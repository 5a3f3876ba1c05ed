import type { StepId } from '../prompts/types.ts';
import { withHelp } from './help.ts';
import { checkFirst } from './kinds/check-first.ts';
import { inspectNodes, lampsNodes, sensorsNodes } from './kinds/checklist.ts';
import { confirmNodes } from './kinds/confirm.ts';
import { crankNodes } from './kinds/crank.ts';
import { takeBack } from './kinds/echo.ts';
import { faultsNodes, reasonReplies } from './kinds/faults.ts';
import { holdNodes } from './kinds/hold.ts';
import { askReply, isReason, isReply, noReason } from './kinds/question.ts';
import { readingNodes } from './kinds/reading.ts';
import { refused, unmetNeeds } from './kinds/refused.ts';
import { seriesNodes } from './kinds/series.ts';
import { membersOf } from './kinds/together.ts';
import { neverUnanswered } from './kinds/unanswered.ts';
import { watchNodes } from './kinds/watch.ts';
import { believed, freshQuestion, isDone, NEXT, pass } from './progress.ts';
import { safeguardsLost, stillTakenAway } from './safeguards.ts';
import type { Step } from './steps.ts';
import { isWatchOver } from './timing.ts';
import { type Look, type Move, type Node, type Nodes, note, remark, update, withMeta } from './toolkit.ts';

/** The states of one step, by its kind. */
function kindNodes(step: Step, all: readonly Step[]): Nodes {
  switch (step.kind) {
    case 'confirm':
      return confirmNodes(step, all);
    case 'reading':
      return step.series ? seriesNodes(step, step.series) : readingNodes(step);
    case 'hold':
      return holdNodes(step);
    case 'lamps':
      return lampsNodes(step);
    case 'sensors':
      return sensorsNodes(step);
    case 'inspect':
      return inspectNodes(step);
    case 'crank':
      return crankNodes(step, all);
    case 'watch':
      return watchNodes(step);
    case 'faults':
      return faultsNodes(step);
  }
}

export const phaseOf = (id: StepId) => id.slice(0, id.indexOf('.'));
export const stepKey = (id: StepId) => id.slice(id.indexOf('.') + 1);
export const stepTarget = (id: StepId) => `#procedure.${id}`;

/** Where the limits are tight there is no hold, no going back and no skipping: only the reply, or stop. */
const refuseAll: NonNullable<Node['on']> = Object.fromEntries(
  ['hold', 'goBack', 'skip', 'takeBack'].map(type => [
    type,
    { actions: remark(() => ({ line: 'notWhileCritical', values: {} })) },
  ]),
);

const isCritical = (node: Node) => [node.tags ?? []].flat().includes('critical');

const guardCritical = (nodes: Nodes): Nodes =>
  Object.fromEntries(
    Object.entries(nodes).map(([key, node]) => [
      key,
      isCritical(node) ? { ...node, on: { ...node.on, ...refuseAll } } : node,
    ]),
  );

/** Its seconds began before it was asked for the first time: asked for once more, they would be over. */
const countsFromBefore = (step: Step) => step.kind === 'confirm' && step.within?.sinceMs !== undefined;

/** A watch goes on where it is come back to, and is never begun anew. */
const isOver = (step: Step, look: Look) =>
  step.kind === 'watch' && isWatchOver(step.id, step.timeUp.seconds, look);

/** Asked for anew after a run, a step stands far before it: going back from there would take the whole run back. */
const undoesRun = (target: Step, all: readonly Step[], { context }: Look) =>
  all.slice(all.indexOf(target)).some(({ id, engine }) => engine === 'running' && isDone(context, id));

/** The nearest earlier step that applies here and is done with the engine in the same state. */
function stepBefore(step: Step, all: readonly Step[], look: Look): Step | null {
  const index = all.indexOf(step);
  const before = all
    .slice(0, index)
    .reverse()
    .find(candidate => isDone(look.context, candidate.id));
  return before &&
    before.engine === step.engine &&
    !countsFromBefore(before) &&
    !isOver(before, look) &&
    !(step.engine === 'off' && undoesRun(before, all, look))
    ? before
    : null;
}

/**
 * Back to the step before, with all behind it undone. What people say is taken back, what they did to the engine is not:
 * what a step behind it has taken away is made safe anew before anything is done under it.
 */
function goingBack(step: Step, all: readonly Step[]): Move[] {
  const place = (id: StepId) => all.findIndex(candidate => candidate.id === id);
  const undone = (look: Look) => {
    const target = stepBefore(step, all, look);
    const group = target && groupOf(target);
    const first = group ? membersOf(group, all)[0] : target;
    const from = first ? all.indexOf(first) : all.length;
    const done = look.context.done.filter(id => place(id) < from);
    return { from, done, lost: safeguardsLost(all, look.context, done) };
  };
  const undo = update(look => {
    const { from, lost, ...left } = undone(look);
    const done = left.done.filter(id => !lost.includes(id));
    return {
      ...freshQuestion,
      done,
      takenAway: stillTakenAway(done, look.context),
      skips: look.context.skips.filter(skip => place(skip.step) < from),
      openItems: look.context.openItems.filter(item => place(item.step) < from),
      echoed: look.context.echoed.filter(({ step: id }) => place(id) < from),
    };
  });
  const safeAgain = remark(look => ({
    line: 'safeAgainFirst',
    values: { steps: { list: undone(look).lost.map(id => ({ step: id })) } },
  }));
  const isPossible = (look: Look) => stepBefore(step, all, look) !== null;
  return [
    {
      guard: look => isPossible(look) && undone(look).lost.length > 0,
      target: NEXT,
      actions: [safeAgain, undo],
    },
    { guard: isPossible, target: NEXT, actions: undo },
    { actions: remark(() => ({ line: 'cannotGoBack', values: {} })) },
  ];
}

/** The step's states behind a look at the gates that it needs. */
const onlyWhenMet = (step: Step, all: readonly Step[], nodes: Nodes, first: string): Nodes => ({
  entering: {
    always: [{ guard: look => unmetNeeds(step, all)(look).length > 0, target: 'refused' }, { target: first }],
  },
  refused: refused(step, all, 'entering'),
  ...nodes,
});

const groupOf = (step: Step) => (step.kind === 'confirm' ? step.together?.group : undefined);

/** One step as a state: its kind's states, with going back and, where the profile allows it, skipping. */
export function buildStep(step: Step, all: readonly Step[]): Node {
  const own = guardCritical(checkFirst(step, kindNodes(step, all)));
  const first = 'begin' in own ? 'begin' : 'asking';
  const nodes = step.needs && !('refused' in own) ? onlyWhenMet(step, all, own, first) : own;
  const skippable = ({ context }: Look) => context.profile.allowedSkips.some(id => id === step.id);
  return {
    initial: 'entering' in nodes ? 'entering' : first,
    tags: step.engine === 'running' ? ['running'] : step.engine === 'cranking' ? ['starting'] : [],
    entry: update(({ context }) => ({
      step: step.id,
      // A wish for single questions holds for the list, or the group, that it was said in.
      ...(context.oneByOne === step.id || context.oneByOne === groupOf(step) ? {} : { oneByOne: null }),
    })),
    states: withHelp(neverUnanswered(step, { ...nodes, skipping: skipping(step) })),
    on: {
      goBack: goingBack(step, all),
      takeBack: [takeBack(all), { actions: remark(() => ({ line: 'cannotTakeBack', values: {} })) }],
      skip: [
        { guard: skippable, target: '.skipping' },
        { actions: remark(() => ({ line: 'cannotSkip', values: {} })) },
      ],
    },
  };
}

/** A skip needs a reason, spoken from a short list or typed; it goes on the record. */
function skipping(step: Step): Node {
  const question = askReply(
    { by: step.by, critical: false },
    () => ({ line: 'skipWhy', values: { title: { step: step.id } } }),
    reasonReplies.map(reply => ({ reply, move: skipFor(step, reply) })),
  );
  return {
    ...withMeta(question, { freeText: true }),
    on: {
      ...question.on,
      reply: [
        ...reasonReplies.map(reply => ({
          guard: (look: Look) => isReply(reply)(look) && believed(look),
          ...skipFor(step, reply),
        })),
        { guard: isReply('notYet'), target: NEXT },
      ],
      reason: [{ guard: isReason, ...skipFor(step, null) }, noReason],
    },
  };
}

function skipFor(step: Step, reply: (typeof reasonReplies)[number] | null) {
  const done = pass(step);
  const reason = ({ event }: Look) => (event.type === 'reason' ? event.text : (reply ?? ''));
  return {
    target: done.target,
    actions: [
      remark(look => ({ line: 'skipped', values: { reason: reply ? { reply } : reason(look) } })),
      note(look => ({ kind: 'skipped', data: { step: step.id, reason: reason(look), by: look.event.by } })),
      update(look => ({
        skips: [...look.context.skips, { step: step.id, reason: reason(look), by: look.event.by }],
      })),
      ...done.actions,
    ],
  };
}
