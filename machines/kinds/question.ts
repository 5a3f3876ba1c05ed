import type { GroupId, LineId, ReplyId } from '../../prompts/types.ts';
import { isByHand } from '../assurance.ts';
import { canBeRead } from '../limits/gauges.ts';
import {
  believed,
  deniedLate,
  extendDeadline,
  lateStops,
  questionAgain,
  stopFor,
  TRUSTED_MISUNDERSTANDINGS,
} from '../progress.ts';
import type { Step } from '../steps.ts';
import {
  atMs,
  type Effect,
  type Line,
  type Look,
  type Move,
  type Node,
  note,
  remark,
  speak,
  update,
} from '../toolkit.ts';
import type { Cause, Person, Quantity } from '../vocabulary.ts';
import { isFromBus, questionValue, setValueAside } from './bus.ts';
import { questionHeard } from './ear.ts';
import { refuseOtherVoice } from './voice.ts';

/** What a step asks in its first state: its own sentence, with its own figures. */
export const askFor =
  (step: Step): Line =>
  ({ context }) => ({ line: 'ask', values: { ...step.words, ...step.values?.(context) } });

export const isReply = (id: ReplyId) => (look: Look) => look.event.type === 'reply' && look.event.id === id;

/** Nobody says for the second person what only they can vouch for. */
export const bySecondPerson = ({ event }: Look) => event.by === 'second';

/** Nobody signs, or accepts a fault code, for the supervisor. */
export const isSupervisor = ({ event }: Look) => event.by === 'supervisor';

/** One word of fewer letters tells nothing: "no", "yes", "done". */
const LONG_WORD = 7;

/** A reason is two words at least, or a long one; "no" or "120" is none. */
export const isReason = ({ event }: Look): boolean => {
  const words = event.type === 'reason' ? (event.text.match(/\p{L}{2,}/gu) ?? []) : [];
  return words.length >= 2 || words.some(word => word.length >= LONG_WORD);
};

/** What was said for a reason and is none. */
export const noReason: Move = { actions: remark(() => ({ line: 'noReason', values: {} })) };

const repair = ({ context, event }: Look, digits: boolean, by: Person): LineId => {
  // Nothing is misheard at the keys: neither figures nor another mouth mend what was typed.
  if (event.type === 'unclear' && isByHand(event.via)) return 'unclear';
  if (event.type === 'reply' && isByHand(event.via)) return 'takenBack';
  return context.misheard >= TRUSTED_MISUNDERSTANDINGS
    ? by === 'supervisor'
      ? 'onlySupervisor'
      : 'unclearThrice'
    : context.misheard === 2 && digits
      ? 'unclearDigits'
      : 'unclear';
};

/** What has just happened was not understood, denied or contradicted: an old error stands before no new question. */
const isMisunderstood = ({ context, event }: Look) =>
  context.misheard > 0 &&
  (event.type === 'unclear' || event.type === 'value' || (event.type === 'reply' && event.id === 'no'));

/**
 * The question, with a word before it when it was misunderstood: repeat, then digits, then another mouth, or the
 * supervisor's own hand. That word is of this moment: said again, and shown later, the question stands without it.
 */
export const askAgain = (ask: Line, digits: boolean, by: Person) => {
  const [remember] = speak(ask);
  const [, say] = speak(look => ({
    ...ask(look),
    ...(isMisunderstood(look) ? { prefix: repair(look, digits, by) } : {}),
  }));
  return [remember, say] as const;
};

export const countMisheard = update(({ context }) => ({ misheard: context.misheard + 1, pending: null }));

/** What was not understood is counted, and the question put again. */
export const notUnderstood = (ask: Line, by: Person): Move => ({
  actions: [countMisheard, ...askAgain(ask, false, by)],
});

/** A reply that stops at once, with its cause, or with one that is asked for then. */
export interface Trouble {
  readonly reply: ReplyId;
  readonly cause: Cause | null;
  /** What comes before the stop. */
  readonly actions?: readonly Effect[];
}

/** What every waiting question has in common. */
export interface Waiting {
  readonly by: Person;
  readonly critical: boolean;
  /** The cause of the stop when a running deadline passes. */
  readonly late?: Cause | undefined;
  /** Replies that stop at once. */
  readonly trouble?: Trouble | readonly Trouble[] | undefined;
  /** Somebody looks round a running engine: "not yet" is said while they do, and anything wrong stops it. */
  readonly looking?: boolean;
  /** The reply that a plain "yes" or "done" stands for, and whether by voice too. */
  readonly affirmed?: NonNullable<Node['meta']>['affirmed'] | undefined;
  /** Several steps are asked together. */
  readonly group?: GroupId | undefined;
  /** What a value leads to that stops the engine: ahead of every doubt, and in whoever's voice. */
  readonly danger?: readonly Move[] | undefined;
  /** What may be answered instead of a number, and where it leads, the first way that is open. */
  readonly instead?: { readonly reply: ReplyId; readonly moves: readonly Move[] } | undefined;
}

const metaOf = ({ by, affirmed, group }: Waiting) => ({
  by,
  ...(affirmed ? { affirmed } : {}),
  ...(group ? { group } : {}),
});

const tagsOf = (waiting: Waiting): NonNullable<Node['tags']> => (waiting.critical ? ['critical'] : []);
const lateMoves = (waiting: Waiting) => (waiting.late ? lateStops([waiting.late]) : []);
const troublesOf = ({ trouble, looking }: Waiting): Trouble[] => [
  ...[trouble ?? []].flat(),
  ...(looking ? [{ reply: 'somethingWrong', cause: null } as const] : []),
];
/** What is said by somebody who has not come to an answer. */
const notYetOf = ({ looking }: Waiting): ReplyId => (looking ? 'stillLooking' : 'notYet');
const troubleMoves = (waiting: Waiting): Move[] =>
  troublesOf(waiting).map(({ reply, cause, actions = [] }) => {
    const stop = stopFor(cause);
    return { guard: isReply(reply), target: stop.target, actions: [...actions, ...stop.actions] };
  });
const troubleReplies = (waiting: Waiting) => troublesOf(waiting).map(({ reply }) => reply);

/** What a number of this quantity that stops the engine leads to, ahead of everything that would hold it up. */
const dangerMoves = (
  { danger = [] }: Waiting,
  quantity: Quantity,
  where: (look: Look) => boolean = () => true,
) =>
  danger.map(move =>
    both(
      look =>
        look.event.type === 'value' &&
        look.event.quantity === quantity &&
        canBeRead(quantity, look.event.si) &&
        where(look),
      move,
    ),
  );

/** The move where this is so too. */
const both = (guard: (look: Look) => boolean, move: Move): Move => ({
  ...move,
  guard: look => guard(look) && (move.guard?.(look) ?? true),
});

const believedReply = (reply: ReplyId, move: Move): Move =>
  both(look => isReply(reply)(look) && believed(look), move);

/**
 * What the supervisor answers for is answered by nobody else, and in no voice that was misunderstood too often: what
 * anybody says there is told so. A bay without a device of the supervisor's has them answer at the leading one, by hand.
 */
const onlySupervisor = ({ by }: Waiting, replies: readonly ReplyId[]): Move[] =>
  by === 'supervisor'
    ? replies.map(reply => ({
        guard: look => isReply(reply)(look) && !(isSupervisor(look) && believed(look)),
        actions: remark(() => ({ line: 'onlySupervisor', values: {} })),
      }))
    : [];

/** Waits for one reply; `heard` says where it leads. */
export function askReply(
  waiting: Waiting,
  ask: Line,
  replies: readonly { readonly reply: ReplyId; readonly move: Move }[],
): Node {
  return {
    tags: tagsOf(waiting),
    meta: {
      ...metaOf(waiting),
      replies: [...new Set(replies.map(row => row.reply)), notYetOf(waiting), ...troubleReplies(waiting)],
    },
    entry: [update(() => ({ pending: null })), ...askAgain(ask, false, waiting.by)],
    on: {
      reply: [
        ...troubleMoves(waiting),
        ...lateMoves(waiting),
        ...onlySupervisor(
          waiting,
          replies.map(({ reply }) => reply),
        ),
        ...replies.map(({ reply }) => both(isReply(reply), refuseOtherVoice)),
        ...replies.map(({ reply, move }) => believedReply(reply, move)),
        { guard: isReply(notYetOf(waiting)), actions: remark(() => ({ line: 'notYet', values: {} })) },
      ],
      unclear: [...lateMoves(waiting), notUnderstood(ask, waiting.by)],
      clock: lateMoves(waiting),
    },
  };
}

/**
 * Waits for a number; it is put aside for its read-back. What the bus gives by itself may go another way, and so may
 * what needs no read-back.
 */
export function askValue(
  waiting: Waiting,
  ask: Line,
  quantity: Quantity,
  move: { readonly target: string; readonly actions?: ReturnType<typeof update> | undefined },
  byBus: readonly Move[] = [],
  unread: readonly Move[] = [],
): Node {
  const counts = (look: Look) =>
    look.event.type === 'value' &&
    look.event.quantity === quantity &&
    canBeRead(quantity, look.event.si) &&
    (look.event.via === 'bus' ? isFromBus(quantity)(look) : believed(look));
  return {
    tags: tagsOf(waiting),
    meta: {
      replies: [...(waiting.instead ? [waiting.instead.reply] : []), 'notYet', ...troubleReplies(waiting)],
      quantity,
      by: waiting.by,
    },
    entry: [update(() => ({ pending: null })), ...askAgain(ask, true, waiting.by)],
    on: {
      value: [
        ...dangerMoves(waiting, quantity),
        ...[refuseOtherVoice, ...byBus, questionValue, questionHeard, ...unread].map(way =>
          both(counts, way),
        ),
        {
          ...move,
          guard: counts,
          actions: [setValueAside, update(extendDeadline), ...(move.actions ? [move.actions] : [])],
        },
      ],
      reply: [
        ...troubleMoves(waiting),
        ...(waiting.instead?.moves ?? []).map(way => believedReply(waiting.instead?.reply ?? 'notYet', way)),
        { guard: isReply('notYet'), actions: remark(() => ({ line: 'notYet', values: {} })) },
      ],
      unclear: [...lateMoves(waiting), { actions: [countMisheard, ...askAgain(ask, true, waiting.by)] }],
      clock: lateMoves(waiting),
    },
  };
}

/** Puts a reply aside for its read-back. */
export const setAside = (id: ReplyId) =>
  update(look => ({ pending: { kind: 'reply', id, atMs: atMs(look.event) }, ...extendDeadline(look) }));

/** The value that was put aside, and the number that has just been said beside it. */
const twoValues = ({ context: { pending }, event }: Look) =>
  pending?.kind === 'value' && event.type === 'value' && event.quantity === pending.quantity
    ? { quantity: pending.quantity, before: pending.si, now: event.si }
    : null;

/**
 * A number said while another one is read back. The same one is read back once more; another one contradicts it: then
 * neither counts, and the question is put again. What the bus shows meanwhile is no contradiction of its own.
 */
function numberMeanwhile(line: Line, again: { readonly target: string }): Move[] {
  const said = (look: Look) => (look.event.via === 'bus' ? null : twoValues(look));
  return [
    {
      guard: look => said(look)?.before === said(look)?.now && said(look) !== null,
      actions: [...speak(line)],
    },
    {
      guard: look => said(look) !== null,
      target: again.target,
      actions: [
        note(look => ({ kind: 'contradiction', data: { step: look.context.step, ...said(look) } })),
        remark(look => {
          const two = said(look);
          if (!two) return { line: 'unclear', values: {} };
          const { quantity, before, now } = two;
          return {
            line: 'readingsDiffer',
            values: {
              name: { quantityName: quantity },
              before: { quantity, si: before },
              now: { quantity, si: now },
            },
          };
        }),
        countMisheard,
      ],
    },
  ];
}

/**
 * A number that stops the engine, said while another one is read back, contradicts nothing: it is read back itself. Where
 * that one was to stop it too, the seconds to deny it run on.
 */
function dangerMeanwhile(waiting: Waiting, quantity: Quantity, line: Line): Move[] {
  const runs = ({ context: { pending } }: Look) => pending?.kind === 'value' && pending.stops !== undefined;
  return [
    ...dangerMoves(waiting, quantity, look => runs(look) && look.event.via !== 'bus').map(
      ({ guard }): Move => ({
        ...(guard ? { guard } : {}),
        actions: [
          update(look => {
            const { pending } = look.context;
            const { event } = look;
            return pending?.kind === 'value' && event.type === 'value'
              ? { pending: { ...pending, si: event.si } }
              : {};
          }),
          ...speak(line),
        ],
      }),
    ),
    ...dangerMoves(waiting, quantity).map(move => ({
      ...move,
      reenter: true,
    })),
  ];
}

/**
 * Speaks what was heard and waits for "correct" or "wrong"; anything else changes nothing, except another number.
 * @param corrects what is read back, where it is a number
 */
export function readBack(
  waiting: Waiting,
  line: Line,
  yes: readonly Move[],
  no: { readonly target: string; readonly actions?: Effect | undefined },
  corrects?: Quantity,
): Node {
  return {
    tags: tagsOf(waiting),
    meta: {
      ...metaOf({ ...waiting, affirmed: { reply: 'yes', always: false } }),
      replies: ['yes', 'no', ...troubleReplies(waiting)],
      ...(corrects === undefined ? {} : { corrects }),
    },
    entry: [...speak(line)],
    on: {
      ...(corrects === undefined
        ? {}
        : {
            value: [
              ...lateMoves(waiting),
              ...dangerMeanwhile(waiting, corrects, line),
              ...numberMeanwhile(line, no),
            ],
          }),
      reply: [
        ...troubleMoves(waiting),
        ...lateMoves(waiting),
        ...onlySupervisor(waiting, ['yes']),
        both(isReply('yes'), refuseOtherVoice),
        ...yes.map(move => believedReply('yes', move)),
        ...(waiting.late ? [both(isReply('no'), deniedLate(waiting.late))] : []),
        {
          guard: isReply('no'),
          target: no.target,
          actions: [countMisheard, update(questionAgain), ...(no.actions ? [no.actions] : [])],
        },
      ],
      unclear: [
        ...lateMoves(waiting),
        {
          actions: [
            update(({ context }) => ({ misheard: context.misheard + 1 })),
            ...speak(look => ({ ...line(look), prefix: repair(look, false, waiting.by) })),
          ],
        },
      ],
      clock: lateMoves(waiting),
    },
  };
}

/** The read-back of a reply that was put aside. */
export const readBackReply: Line = ({ context }) => ({
  line: 'readBackReply',
  values: { reply: context.pending?.kind === 'reply' ? { reply: context.pending.id } : '' },
});

/** The read-back of a value that was put aside, by the name of its quantity, with what the bus has to do with it. */
export const readBackValue: Line = ({ context: { pending } }) => {
  if (pending?.kind !== 'value') return { line: 'readBackValue', values: {} };
  const { quantity, si, byBus, busSi } = pending;
  const values = {
    name: { quantityName: quantity },
    spoken: { brief: quantity, si, ...(byBus ? {} : { asSaid: true as const }) },
  };
  if (busSi !== undefined)
    return { line: 'readBackDiffers', values: { ...values, bus: { quantity, si: busSi } } };
  return { line: 'readBackValue', values, ...(byBus ? { prefix: 'fromBus' as const } : {}) };
};
