import { replyNeedsReadBack, weightOf } from '../assurance.ts';
import { freshQuestion, isDone, NEXT, passed } from '../progress.ts';
import type { ConfirmStep, Step, Together } from '../steps.ts';
import { type Effect, type Line, type Look, type Nodes, note, remark, update, withMeta } from '../toolkit.ts';
import { askedAgain, settled } from './figures.ts';
import { askReply, readBack, readBackReply, setAside, type Waiting } from './question.ts';

/** The steps of one group, in their order; they stand side by side in the procedure. */
export const membersOf = (group: string, all: readonly Step[]): ConfirmStep[] =>
  all.flatMap(step => (step.kind === 'confirm' && step.together?.group === group ? [step] : []));

/**
 * A step that is asked together with its neighbours: one question names them all, and one reply, which is taken
 * nowhere else, passes them all. "One by one" asks for each by itself; so does a group of which only one is left.
 * @param alone the states of the step by itself, beginning with `asking`
 */
export function togetherNodes(
  step: ConfirmStep,
  { group, ok }: Together,
  all: readonly Step[],
  alone: Nodes,
): Nodes {
  const left = ({ context }: Look) =>
    membersOf(group, all).filter(member => !isDone(context, member.id) && (member.when?.(context) ?? true));
  /** Together they are made sure of like the one of them on which most hangs. */
  const needsReadBack = (look: Look) => left(look).some(member => replyNeedsReadBack(weightOf(member))(look));
  const isGood = (look: Look) => left(look).every(member => member.possible?.(look.context) ?? true);
  const ask: Line = look => ({
    line: 'together',
    values: {
      items: {
        list: left(look).map(({ id, values }) => ({ item: id, values: values?.(look.context) ?? {} })),
      },
      reply: { reply: ok },
    },
  });
  /** Numbers that one of them names; where one is wrong, they are asked for again. */
  const figures = membersOf(group, all).flatMap(({ readsBack = [] }) => readsBack);
  const waiting: Waiting = { by: step.by, critical: false, group, affirmed: { reply: ok, always: false } };
  const passAll: { readonly target: string; readonly actions: Effect[] } = {
    target: NEXT,
    actions: [
      ...membersOf(group, all).map(member =>
        note(look => (left(look).includes(member) ? passed(member, look) : null)),
      ),
      settled(figures),
      update(look => ({
        ...freshQuestion,
        done: [...look.context.done, ...left(look).map(({ id }) => id)],
        again: look.context.again.filter(id => !left(look).some(member => member.id === id)),
      })),
    ],
  };
  return {
    begin: {
      always: [
        {
          guard: look => look.context.oneByOne === group || left(look).length < 2,
          target: 'asking',
        },
        { target: 'together' },
      ],
    },
    together: withMeta(
      askReply(waiting, ask, [
        {
          reply: ok,
          move: {
            guard: look => isGood(look) && needsReadBack(look),
            target: 'togetherReadBack',
            actions: setAside(ok),
          },
        },
        { reply: ok, move: { guard: isGood, ...passAll } },
        { reply: ok, move: { actions: remark(() => ({ line: 'notPossible', values: {} })) } },
        ...(figures.length > 0
          ? [{ reply: 'no' as const, move: { target: NEXT, actions: askedAgain(figures) } }]
          : []),
        {
          reply: 'oneByOne',
          move: { target: 'asking', actions: update(() => ({ oneByOne: group, misheard: 0 })) },
        },
      ]),
      { items: membersOf(group, all).map(({ id }) => id) },
    ),
    togetherReadBack: readBack(waiting, readBackReply, [passAll], { target: 'together' }),
    ...alone,
  };
}
