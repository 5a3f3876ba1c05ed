import type { LineId } from '../../prompts/types.ts';
import type { Context, Unanswered } from '../context.ts';
import { STOPPED, stopNow } from '../progress.ts';
import type { Step } from '../steps.ts';
import {
  atMs,
  type Line,
  type Look,
  type Move,
  type Node,
  type Nodes,
  type Offer,
  remark,
  update,
} from '../toolkit.ts';
import type { Person } from '../vocabulary.ts';
import { actionsOf, entryOf, exitOf, movesOf } from './nodes.ts';

/** What is said of silence, and after how many seconds of it. */
interface Moment {
  readonly afterS: number;
  readonly does: 'remind' | 'callOut';
}

/** What comes of silence, moment by moment, and when everything is off. */
interface Silence {
  readonly moments: readonly Moment[];
  readonly stopS: number;
}

type Patience = Unanswered['patience'];

/**
 * How long a question beside a running engine may go unanswered. A glance at lamps or gauges takes seconds: reminded
 * after 20, called out to the other after 40, everything off after 60. A hunt takes walking: reminded each minute, called
 * out after three, everything off after five. Our own choice, no published source: a person who is hurt or gone must not
 * leave an engine running, and nobody is to be hurried round it.
 */
const silences: Readonly<Record<Patience, Silence>> = {
  glance: {
    moments: [
      { afterS: 20, does: 'remind' },
      { afterS: 40, does: 'callOut' },
    ],
    stopS: 60,
  },
  hunt: {
    moments: [
      { afterS: 60, does: 'remind' },
      { afterS: 120, does: 'remind' },
      { afterS: 180, does: 'callOut' },
      { afterS: 240, does: 'remind' },
    ],
    stopS: 300,
  },
};

/** A gauge that is read again and again, codes, and what is watched for half a minute: none of them is a glance. */
const patienceOf = (step: Step): Patience =>
  step.patience ??
  (step.kind === 'watch' || step.kind === 'faults' || (step.kind === 'reading' && step.series)
    ? 'hunt'
    : 'glance');

const endsMs = ({ sinceMs, patience }: Unanswered) => sinceMs + silences[patience].stopS * 1000;

const nextMoment = ({ told, patience }: Unanswered): Moment | undefined => silences[patience].moments[told];

const momentMs = ({ sinceMs }: Unanswered, { afterS }: Moment) => sinceMs + afterS * 1000;

/** When silence next has something to say, or ends in a stop; null where nobody is asked. */
export function unansweredAlarmMs({ unanswered }: Pick<Context, 'unanswered'>): number | null {
  if (unanswered === null) return null;
  const moment = nextMoment(unanswered);
  return moment ? momentMs(unanswered, moment) : endsMs(unanswered);
}

/** When silence ends in a stop; null where nobody is asked. */
export const silenceEndsMs = ({ unanswered }: Pick<Context, 'unanswered'>): number | null =>
  unanswered && endsMs(unanswered);

/** From now on an answer is awaited. */
export const awaitedFrom = ({ event }: Look, patience: Patience): Unanswered => ({
  sinceMs: atMs(event),
  told: 0,
  patience,
});

/** From now on, unless seconds of its own run already. */
const awaitAnswer = (patience: Patience) =>
  update(look => ({ unanswered: look.context.deadline ? null : awaitedFrom(look, patience) }));

/** From now on, where nothing was awaited yet: what is not understood lengthens no silence. */
export const awaitAnswerNow = (patience: Patience) =>
  update(look => ({ unanswered: look.context.unanswered ?? awaitedFrom(look, patience) }));

const awaitNothing = update(() => ({ unanswered: null }));

/**
 * Somebody spoke, in whatever words: the question is as new. What the bus or the clock says is no answer, and a hold is
 * lengthened by nothing.
 */
export const answered = update(look => {
  const { context, event } = look;
  const { unanswered, heldSinceMs } = context;
  return unanswered && heldSinceMs === null && event.via !== 'bus' && event.via !== 'tool'
    ? { unanswered: awaitedFrom(look, unanswered.patience) }
    : {};
});

/** The moment that has come; a late clock passes over what is behind it, and never over the stop. */
function dueNow({ context: { unanswered }, event }: Look): Moment['does'] | 'stop' | null {
  if (unanswered === null) return null;
  if (atMs(event) >= endsMs(unanswered)) return 'stop';
  const moment = nextMoment(unanswered);
  return moment && atMs(event) >= momentMs(unanswered, moment) ? moment.does : null;
}

const isDue = (does: Moment['does'] | 'stop') => (look: Look) => dueNow(look) === does;

const told = update(({ context: { unanswered } }) => ({
  unanswered: unanswered && { ...unanswered, told: unanswered.told + 1 },
}));

/**
 * What happens as the silence lasts, each moment once, in its order; at its end everything is off, and the cause is asked.
 * @param callOut who is to be looked for; without it there is one more reminder
 */
export const silenceMoves = (patience: Patience, remind: Line, callOut?: LineId): Move[] => [
  {
    guard: isDue('stop'),
    target: STOPPED,
    actions: update(look => stopNow(look, null, silences[patience].stopS)),
  },
  {
    guard: isDue('callOut'),
    actions: [remark(callOut ? () => ({ line: callOut, values: {}, priority: 'hazard' }) : remind), told],
  },
  { guard: isDue('remind'), actions: [remark(remind), told] },
];

const callTo = (by: Person): LineId => (by === 'second' ? 'lookForSecond' : 'lookForTechnician');

/** An answer that leads nowhere is an answer all the same. */
const countsAsAnswer = (move: Move): Move => ({ ...move, actions: [answered, ...actionsOf(move)] });

/** Whoever is asked beside a running engine and says nothing is reminded, then looked for, then everything is off. */
export const neverUnanswered = (step: Step, nodes: Nodes): Nodes =>
  step.engine === 'running'
    ? Object.fromEntries(
        Object.entries(nodes).map(([key, node]) => [
          key,
          node.meta ? awaiting(step, key, node, node.meta) : node,
        ]),
      )
    : nodes;

function awaiting(step: Step, key: string, node: Node, { awaits, by }: Offer): Node {
  // Somebody else is fetched for another gauge.
  const patience = key.startsWith('vouching') ? 'hunt' : patienceOf(step);
  // While time alone goes by nobody has to answer.
  const begins = awaits === 'time' ? awaitNothing : awaitAnswer(patience);
  // That it stands is what is waited for.
  const line = step.kind === 'confirm' && step.standing ? 'stillWaitingOff' : 'stillWaiting';
  const remind: Line = () => ({ line, values: { title: { step: step.id } } });
  return {
    ...node,
    entry: [begins, ...entryOf(node)],
    exit: [...exitOf(node), awaitNothing],
    on: {
      ...node.on,
      reply: movesOf(node, 'reply').map(countsAsAnswer),
      value: movesOf(node, 'value').map(countsAsAnswer),
      clock: [...movesOf(node, 'clock'), ...silenceMoves(patience, remind, callTo(by))],
    },
  };
}
