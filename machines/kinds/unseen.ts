import type { ReplyId } from '../../prompts/types.ts';
import { switchedOff } from '../controls.ts';
import { shownRpm, showsRunning } from '../limits/running.ts';
import { believed, pass, STOPPED, stopFor, stopNow } from '../progress.ts';
import type { CrankStep } from '../steps.ts';
import {
  atMs,
  type Effect,
  type Line,
  type Look,
  type Move,
  type Node,
  remark,
  update,
  withMeta,
} from '../toolkit.ts';
import { OUTCOME_WITHIN_S, startDeadline } from './deadline.ts';
import { entryOf, movesOf, repliesOf } from './nodes.ts';
import { askReply, isReply } from './question.ts';

/** What nobody says of an engine that runs, and on what it is cranked again. */
const OF_ONE_THAT_STANDS: readonly ReplyId[] = ['nothingYet', 'clearToCrank', 'ready'];

const callItRuns = remark(look => ({
  line: 'itRuns',
  values: { speed: { unit: 'rpm', si: Math.round(shownRpm(look)) } },
  priority: 'hazard',
}));

/**
 * An engine that fires when nothing was hoped for any more: as the key is let go, or behind a "nothing yet" that was
 * misheard. Where it may, nobody is told to crank it, and that it fired is taken, with the seconds for oil pressure
 * counted from the end of the burst. Without fuel it stops at once.
 */
export function runsUnseen(step: CrankStep) {
  const done = pass(step);
  const { trouble } = step;
  const stop = trouble ? stopFor(trouble.cause) : null;
  const burstEndMs = ({ context }: Look) => context.bursts.at(-1)?.endMs ?? 0;
  const withinS = ({ context }: Look) => context.profile.oilPressure.firstFireWithinS;
  const isLate = (look: Look) => atMs(look.event) - burstEndMs(look) >= withinS(look) * 1000;
  /** Nobody has looked at its oil pressure in time: nothing was found, and it may not run on. */
  const late: Move = {
    guard: isLate,
    target: STOPPED,
    actions: update(look => stopNow(look, null, withinS(look))),
  };
  /** From when it counts as running, so that the seconds for oil pressure are those that it has had. */
  const sinceBurst: Effect = update(look => ({ runsSinceMs: burstEndMs(look) }));
  const fired: readonly Move[] = stop
    ? [stop]
    : [late, { target: done.target, actions: [sinceBurst, ...done.actions] }];
  const isDenied = (look: Look) => OF_ONE_THAT_STANDS.some(id => isReply(id)(look)) && showsRunning(look);
  const ask: Line = ({ context }) => ({
    line: 'didItFire',
    values: { reply: { reply: 'fired' }, off: switchedOff(context.profile) },
  });
  const asked = askReply(
    { by: step.by, critical: true, late: 'other' },
    ask,
    fired.map(move => ({ reply: 'fired', move })),
  );
  const runs: Node = {
    ...asked,
    tags: ['critical', 'cranking'],
    entry: [startDeadline(() => OUTCOME_WITHIN_S, 'other'), ...entryOf(asked)],
    exit: update(() => ({ deadline: null })),
  };
  /** It is said to stand, and shown to run. */
  const denied: Move = stop
    ? { target: stop.target, actions: [callItRuns, ...stop.actions] }
    : { target: 'runs', actions: callItRuns };

  return {
    late,
    sinceBurst,
    /** Of the question what came of a burst, which has seconds of its own. */
    refused: (stop
      ? { ...denied, guard: isDenied }
      : { guard: isDenied, actions: callItRuns }) satisfies Move,
    /** A state in which the engine is believed to stand. */
    watched(node: Node): Node {
      return {
        ...withMeta(node, {
          replies: [...repliesOf(node), 'fired'],
          anybodys: ['fired'],
        }),
        on: {
          ...node.on,
          reply: [
            ...fired.map(move => ({
              ...move,
              guard: (look: Look) => isReply('fired')(look) && believed(look) && (move.guard?.(look) ?? true),
            })),
            { ...denied, guard: isDenied },
            ...movesOf(node, 'reply'),
          ],
        },
      };
    },
    /** What is shown is asked for, and for no longer than what came of a burst is. */
    nodes: stop ? {} : { runs },
  };
}
